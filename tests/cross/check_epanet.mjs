// Compare losses with EPANET.
//
//     MAINBORE_EPANET_DIR=DIR node check_epanet.mjs PROBE
//
// PROBE is the service_line_probe executable; DIR is a directory in which `npm install epanet-js@0.9.0` was run. Sixty
// pipes are drawn from a fixed seed, each solved as a reservoir, a pipe and a demand. Exit status: 0 agree, 1 differ,
// 77 when DIR is not given or epanet-js is not in it.
//
// Hazen-Williams must agree within 0.5 %: the two programs use differently rounded constants. Darcy-Weisbach must agree
// within 3 %, because EPANET takes its friction factor from Swamee and Jain rather than from Colebrook.
import { spawnSync } from "node:child_process";
import { createRequire } from "node:module";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const cases = 60;
const gradient = 0.4333; // psi per foot, at which EPANET turns head into pressure
const epanetViscosity = 1.1e-5; // ft2/s, EPANET's unit of relative viscosity

const directory = process.env.MAINBORE_EPANET_DIR;
let epanet;
try {
  const packages = createRequire(join(directory, "package.json"));
  epanet = await import(pathToFileURL(packages.resolve("epanet-js")));
} catch {
  console.log("epanet-js is not installed in MAINBORE_EPANET_DIR: nothing compared");
  process.exit(77);
}
const { Project, Workspace } = epanet.Workspace ? epanet : epanet.default;

// Mulberry32: a small generator, so that the cases are the same on every machine.
let state = 1993;
function uniform(low, high) {
  state = (state + 0x6d2b79f5) | 0;
  let t = Math.imul(state ^ (state >>> 15), 1 | state);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return low + (((t ^ (t >>> 14)) >>> 0) / 4294967296) * (high - low);
}
const logarithmic = (low, high) => Math.exp(uniform(Math.log(low), Math.log(high)));

const pipes = Array.from({ length: cases }, () => {
  const bore = logarithmic(0.4, 4.0);
  return {
    bore,
    length: logarithmic(1, 2000),
    c: uniform(80, 150),
    roughness: logarithmic(1e-6, 1e-3),
    k: uniform(0, 12),
    flow: 2.448 * bore * bore * uniform(1.5, 12), // gallons a minute at 1.5 to 12 ft/s: turbulent
    temperature: uniform(33, 69),
  };
});

const probe = spawnSync(process.argv[2], {
  encoding: "utf8",
  input: pipes.map((p) => [p.bore, p.length, p.c, p.roughness, p.k, p.flow, p.temperature].join(" ") + "\n").join(""),
});
const answers = (probe.stdout ?? "").trim().split("\n").map((line) => line.split(" ").map(Number));
if (probe.status !== 0 || answers.length !== cases) {
  console.log(`the probe answered ${answers.length} of ${cases} lines, status ${probe.status}`);
  process.exit(1);
}

const workspace = new Workspace();
if (workspace.loadModule) await workspace.loadModule();
const model = new Project(workspace);

// Head loss in feet and velocity in feet a second through one pipe.
function solve(pipe, law, roughness, viscosity) {
  const headloss = law === "H-W" ? "H-W" : "D-W";
  workspace.writeFile(
    "pipe.inp",
    `[JUNCTIONS]
J 0 ${pipe.flow}
[RESERVOIRS]
R 100000
[PIPES]
P R J ${pipe.length} ${pipe.bore} ${roughness} ${pipe.k} Open
[OPTIONS]
Units GPM
Headloss ${headloss}
Viscosity ${viscosity}
Accuracy 1e-7
Trials 200
[TIMES]
Duration 0
[REPORT]
Status No
[END]
`,
  );
  model.open("pipe.inp", "report.rpt", "out.bin");
  model.openH();
  model.initH(0);
  model.runH();
  const link = model.getLinkIndex("P");
  const result = {
    loss: model.getLinkValue(link, epanet.LinkProperty.Headloss),
    velocity: model.getLinkValue(link, epanet.LinkProperty.Velocity),
  };
  model.closeH();
  model.close();
  return result;
}

let failures = 0;
const worst = {};
function compare(what, ours, theirs, tolerance, pipe) {
  const error = Math.abs(ours - theirs) / Math.abs(theirs);
  worst[what] = Math.max(worst[what] ?? 0, error);
  if (!(error <= tolerance)) {
    failures += 1;
    console.log(`${what}: ours ${ours}, EPANET ${theirs}, pipe ${JSON.stringify(pipe)}`);
  }
}

pipes.forEach((pipe, i) => {
  const [hazenWilliams, darcyWeisbach, minor, , velocity, weight, viscosity] = answers[i];
  const feet = (psi) => (psi * 144) / weight;
  const hw = solve(pipe, "H-W", pipe.c, 1.0);
  compare("Hazen-Williams", hazenWilliams / gradient + feet(minor), hw.loss, 0.005, pipe);
  compare("velocity", velocity, hw.velocity, 1e-4, pipe);
  const dw = solve(pipe, "D-W", pipe.roughness * 1000, viscosity / epanetViscosity);
  compare("Darcy-Weisbach", feet(darcyWeisbach + minor), dw.loss, 0.03, pipe);
});

const summary = Object.entries(worst).map(([what, error]) => `${what} ${error.toExponential(2)}`);
console.log(`${cases} pipes; greatest differences: ${summary.join(", ")}; ${failures} beyond tolerance`);
process.exit(failures ? 1 : 0);
