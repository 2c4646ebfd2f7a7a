"""Field sheets in a browser: on a phone, on paper, and against the plan they were made from.

    sheet_test.py MAINBORE JOB.json ...      [--keep DIRECTORY: page, print and picture of each]

Ends with 77 (skipped) where there is no Chromium.
"""
import json
import pathlib
import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree

from browser import Browser, find_browser

PHONE = 390
PAPERS = {"letter": (8.5, 11.0), "A4": (8.27, 11.69)}
BETWEEN_MARGINS = 768   # letter, in CSS pixels
LARGEST = 200_000       # bytes
BODY_TYPE = 14.0        # 10.5 points, in CSS pixels
DRAWING_TYPE = 11.5     # lettering of drawings

LOOK = r"""
(WIDTH => {
  const problems = [];
  const wide = document.documentElement.scrollWidth;
  if (wide > WIDTH) problems.push('page is ' + wide + ' wide');
  for (const e of document.querySelectorAll('body *')) {
    const box = e.getBoundingClientRect();
    if (box.width && (box.right > WIDTH + 0.5 || box.left < -0.5)) {
      problems.push('sticks out: ' + e.tagName + ' ' + e.textContent.slice(0, 40));
    }
  }
  for (const e of document.querySelectorAll('td, th, dt, dd, li, p, h2, h3, figcaption, .half')) {
    if (e.clientWidth && e.scrollWidth > e.clientWidth + 1) problems.push('wider than its column: ' + e.textContent.slice(0, 40));
  }
  for (const e of document.querySelectorAll('.number')) {
    if (e.getClientRects().length > 1) problems.push('broken: ' + e.textContent);
  }
  // Contrast of every text against white or the nearest fill behind it.
  const parts = color => (color.match(/[\d.]+/g) || []).map(Number);
  const light = rgb => {
    const [r, g, b] = rgb.map(v => { v /= 255; return v <= 0.03928 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  for (const e of document.querySelectorAll('body *')) {
    if (![...e.childNodes].some(n => n.nodeType === 3 && n.data.trim())) continue;
    if (e.tagName === 'title' || e.tagName === 'desc') continue;
    const style = getComputedStyle(e);
    const ink = parts(e.closest('svg') ? style.fill : style.color).slice(0, 3);
    let paper = [255, 255, 255];
    for (let p = e; p; p = p.parentElement) {
      const back = parts(getComputedStyle(p).backgroundColor);
      if (back.length === 3 || back[3] > 0) { paper = back.slice(0, 3); break; }
    }
    const [a, b] = [light(ink), light(paper)].sort((x, y) => y - x);
    if ((a + 0.05) / (b + 0.05) < 7) problems.push('contrast: ' + e.textContent.slice(0, 40));
  }
  // Words of a drawing stay on its paper and off each other.
  for (const svg of document.querySelectorAll('svg:not(.sign)')) {
    const view = svg.viewBox.baseVal;
    const texts = [...svg.querySelectorAll('text')].filter(t => t.textContent.trim());
    const boxes = texts.map(t => t.getBBox());
    boxes.forEach((b, i) => {
      if (b.x < -1 || b.y < -2 || b.x + b.width > view.width + 1 || b.y + b.height > view.height + 1) {
        problems.push('off the paper: ' + texts[i].textContent);
      }
      boxes.forEach((c, j) => {
        const over = Math.min(b.x + b.width, c.x + c.width) - Math.max(b.x, c.x);
        const down = Math.min(b.y + b.height, c.y + c.height) - Math.max(b.y, c.y);
        if (i < j && over > 2 && down > 4) problems.push('words over words: ' + texts[i].textContent + ' / ' + texts[j].textContent);
      });
    });
    for (const id of (svg.getAttribute('aria-labelledby') || '').split(' ')) {
      if (!id || !document.getElementById(id) || !document.getElementById(id).textContent) problems.push('drawing without a name');
    }
    if (!svg.closest('figure').querySelector('figcaption').textContent.trim()) problems.push('drawing without a caption');
  }
  return problems;
})(%d)
"""

DRAWN = r"""
(() => ({
  numbers: [...document.querySelectorAll('[data-path]')].map(e => [e.dataset.path, e.dataset.value, e.dataset.unit, e.textContent]),
  circles: [...document.querySelectorAll('svg .pipe-outside')].map(e =>
      2 * e.getAttribute('r') / e.closest('svg').dataset.unitsPerInch),
  bores: [...document.querySelectorAll('svg .pipe-bore')].map(e =>
      2 * e.getAttribute('r') / e.closest('svg').dataset.unitsPerInch),
  walls: [...document.querySelectorAll('svg rect.wall')].map(e =>
      e.getAttribute('height') / e.closest('svg').dataset.unitsPerInch),
  left: document.querySelectorAll('svg .tooth.whole.left').length,
  right: document.querySelectorAll('svg .tooth.whole.right').length,
  threads: document.querySelectorAll('svg .tooth').length > 0,
  pits: [...document.querySelectorAll('svg .pit')].map(e => {
    const svg = e.closest('svg'), real = x => x / svg.dataset.unitsPerInch;
    const pit = e.getBBox(), spoil = svg.querySelector('.spoil').getBBox(), main = svg.querySelector('.pit-main');
    const rail = svg.querySelector('.rail');
    return {depth: real(pit.height), top: real(pit.width), crown: real(main.getAttribute('cy') - main.getAttribute('r') - pit.y),
      od: real(2 * main.getAttribute('r')), spoilHeight: real(spoil.height), spoilBase: real(spoil.width),
      setback: real(Math.max(pit.x - spoil.x - spoil.width, spoil.x - pit.x - pit.width)),
      occupied: real(Math.max(pit.x + pit.width / 2 - spoil.x, spoil.x + spoil.width - pit.x - pit.width / 2)),
      ladder: rail ? real(Math.abs(rail.getAttribute('y2') - rail.getAttribute('y1'))) : null};
  }),
  profiles: [...document.querySelectorAll('svg .profile')].map(e => {
    const perPsi = e.closest('svg').dataset.unitsPerPsi;
    const down = e.getAttribute('d').match(/[\d.]+ [\d.]+/g).map(at => at.split(' ')[1] / perPsi);
    const wanted = e.closest('svg').querySelector('.wanted').getAttribute('y1') / perPsi;
    return {below: down.filter((_, i) => i % 2 == 0).map(y => y - down[0]), wanted: wanted - down[0]};
  }),
  missing: [...document.querySelectorAll('figcaption')].map(e => e.textContent).filter(t => t.startsWith('Not drawn')),
}))()
"""

TYPE = r"""
(() => {
  const shown = [...document.querySelectorAll('body *')].filter(e => [...e.childNodes].some(n => n.nodeType === 3 && n.data.trim()))
      .filter(e => e.getClientRects().length);
  const size = e => parseFloat(getComputedStyle(e).fontSize);
  return {body: Math.min(...shown.filter(e => !e.closest('svg') && !e.closest('.foot')).map(size)),
    drawings: Math.min(...shown.filter(e => e.closest('svg')).map(e => size(e) * e.closest('svg').getBoundingClientRect().width / 364), 99)};
})()
"""


def plan_of(program, job, output_format, language="en"):
    command = [program, "plan", str(job), "--format", output_format, "--language", language]
    run = subprocess.run(command, capture_output=True, check=False)
    if run.returncode not in (0, 1, 3):
        raise RuntimeError(f"{job}: exit {run.returncode}: {run.stderr.decode()}")
    return run.stdout


def at_path(plan, path):
    for key in path.replace("[", ".").replace("]", "").split("."):
        plan = plan[int(key) if isinstance(plan, list) else key]
    return plan


def in_inches(quantity):
    return quantity["value"] * {"in": 1.0, "mm": 1.0 / 25.4, "ft": 12.0}[quantity["unit"]]


def check_page(page):
    text = page.decode()
    tree = ElementTree.fromstring(text)
    if len(page) > LARGEST:
        yield f"{len(page)} bytes"
    if len(list(tree.iter("script"))) != 1 or "://" in text or "@import" in text:
        yield "not one script, or a remote reference"
    if any(name.startswith("on") for e in tree.iter() for name in e.keys()):
        yield "a handler in the markup"
    ids = [e.get("id") for e in tree.iter() if e.get("id")]
    if len(ids) != len(set(ids)):
        yield "an id twice"
    if tree.find(".//h1") is None or tree.get("lang") is None:
        yield "no heading or no language"


def check_pit(pit, plan):
    planned = plan["excavation"]
    for name, quantity in [("depth", planned["depth"]), ("top", planned["top"]["across"]), ("crown", planned["cover"]),
                           ("spoilHeight", planned["spoil"]["height"]), ("spoilBase", planned["spoil"]["base"]),
                           ("setback", planned["spoil"]["setback"]), ("occupied", planned["spoil"]["occupied"])]:
        if pit[name] is not None and abs(pit[name] - in_inches(quantity)) > 0.25:
            yield f"pit: {name} drawn {pit[name]} in, planned {quantity}"
    # Seen from its side a leaning ladder is drawn as high as it reaches; its length is that, leaning 1 to 4, to the foot.
    if pit["ladder"] is not None:
        spare = in_inches(planned["way_out"]["ladder_length"]) - pit["ladder"] * 17 ** 0.5 / 4
        if not -0.25 < spare < 12.25:
            yield f"pit: ladder drawn {pit['ladder']} in high, planned {planned['way_out']['ladder_length']}"
    od = plan["main"]["od_high"] if "od_high" in plan["main"] else plan["main"]["od"]
    if abs(pit["od"] - in_inches(od)) > 0.05:
        yield f"pit: main drawn {pit['od']} in, planned {od}"


def check_profile(profile, plan):
    service = plan["service"]
    supply = service["supply"]["value"]
    planned = [supply] + [item["left"]["value"] for item in service["losses"]]
    if len(planned) != len(profile["below"]):
        yield f"{len(profile['below'])} points of the profile, {len(planned)} planned"
    for pressure, below in zip(planned, profile["below"]):
        if abs(supply - pressure - below) > 0.15:
            yield f"profile: {supply - below} psi drawn, {pressure} planned"
    if abs(supply - service["residual_wanted"]["value"] - profile["wanted"]) > 0.15:
        yield f"profile: pressure wanted drawn at {supply - profile['wanted']} psi"


def check_drawn(drawn, plan):
    for path, value, unit, _ in drawn["numbers"]:
        wanted = at_path(plan, path)
        number, wanted_unit = (wanted["value"], wanted["unit"]) if isinstance(wanted, dict) else (wanted, "")
        if abs(float(value) - number) > 5e-4 or unit != wanted_unit:
            yield f"{path}: drawn {value} {unit}, planned {wanted}"
    for diameter in drawn["circles"]:
        if abs(diameter - in_inches(plan["main"]["od"])) > 0.004 * diameter:
            yield f"pipe drawn {diameter} in"
    for bore in drawn["bores"]:
        planned = in_inches(plan["main"]["od"]) - 2 * in_inches(plan["main"]["wall_nominal"])
        if abs(bore - planned) > 0.004 * bore:
            yield f"bore drawn {bore} in, planned {planned}"
    if drawn["threads"]:
        whole = int(plan["engagement"]["complete_threads"] + 1e-6)
        if drawn["left"] != whole or drawn["right"] != whole:
            yield f"{drawn['left']} and {drawn['right']} whole threads drawn, {whole} planned"
        for wall in drawn["walls"]:
            if abs(wall - in_inches(plan["main"]["wall_min"])) > 0.002:
                yield f"wall drawn {wall} in"
    taps = plan["method"]["kind"] != "none" and plan["verdict"] != "no-go"
    if taps and "od" in plan["main"] and not drawn["circles"]:
        yield "the pipe is not drawn"
    for part, drawings, check_one in (("excavation", drawn["pits"], check_pit), ("service", drawn["profiles"], check_profile)):
        if len(drawings) != (taps and part in plan):
            yield f"{len(drawings)} drawings of the {part}"
        for drawing in drawings:
            yield from check_one(drawing, plan)
    if "engagement" in plan and plan["method"]["kind"] == "direct" and taps and not drawn["threads"] and not drawn["missing"]:
        yield "the threads are not drawn"


# Readings as a crew types them into the boxes of the job that goes, and what is marked beside them.
TYPED = [("line_pressure", "70", "70 psi: inside"), ("line_pressure", "150", "150 psi: OUTSIDE - stop, plan again"),
         ("line_pressure", "482 kPa", "inside"), ("wall", "1/4 \u201d", '1/4 ": inside'), ("wall", "5mm", "OUTSIDE - stop, plan again"),
         ("wall", "thin", "cannot be read"), ("wall", "0,28", "cannot be read"), ("wall", "28", "cannot be read"), ("wall", ".28", ".28 in: inside"),
         ("circumference", "28 1/2", "28 1/2 in: inside"), ("circumference", "2 ft 4-1/2 in", "inside"), ("circumference", "27-1/2\"", "OUTSIDE - stop, plan again"),
         ("circumference", "28\u00bd\u2033", '28-1/2": inside'), ("pipe_temperature", "8 \u00b0C", ""), ("pipe_temperature", "300", "cannot be read"),
         ("pipe_temperature", "50", "50 degF"), ("joint_distance", "7 ft", "inside"), ("joint_distance", "7", "7 in: OUTSIDE - stop, plan again"), ("surge", "", ""), ("clock", "13:00", "cannot be read"),
         ("clock", "1:30", ""), ("tie_1", "12 ft 6 in", ""), ("wrench_turns", "2-1/4", ""), ("longitude", "-85.20417", ""), ("latitude", "41.51833", ""),
         ("latitude", "141", "cannot be read"), ("latitude", "41.51833", ""), ("condition", "sound", ""), ("date", "2026-05-04", ""), ("start", "07:30", ""),
         ("tapped_by", "RM <b>\"&", ""), ("method", "direct", ""), ("tool", "T-4", ""), ("stop", "1 in AWWA, lot 7", "")]
TYPE_IN = r'''
(([name, text]) => {
  const box = document.querySelector('[data-reads="' + name + '"] .typed') ||
    [...document.querySelectorAll('.record .typed')].find(e => e.getAttribute('aria-label') === document.querySelector('.reads [data-name="' + name + '"]').textContent);
  box.value = text;
  box.dispatchEvent(new Event('input'));
  return box.nextSibling.textContent;
})(%s)
'''
SAVE = r'''
(async () => {
  let saved = null;
  URL.createObjectURL = blob => { saved = blob; return 'data:,'; };
  HTMLAnchorElement.prototype.click = function () { this.dataset.clicked = this.download; };
  document.querySelector('.save button').click();
  return [saved ? await saved.text() : null, document.querySelector('.save output').textContent];
})()
'''


def check_readings(browser, program, job, url, keep):
    """Typed in, marked, kept over a reload, saved, and taken by `record` as it is."""
    browser.media("screen")
    browser.open(url, PHONE)
    for name, text, wanted in TYPED:
        if name == "condition" and browser.evaluate("document.querySelector('[data-reads=condition] .typed').tagName") != "SELECT":
            yield "no choice of conditions"
        marked = browser.evaluate(TYPE_IN % json.dumps([name, text]))
        if marked != wanted:
            yield f"{name}: {text!r} is marked {marked!r}, not {wanted!r}"
    yield from ("typed in: " + problem for problem in browser.evaluate(LOOK % PHONE))
    browser.open(url, PHONE)
    if browser.evaluate("document.querySelector('[data-reads=clock] .typed').value") != "1:30":
        yield "readings are not kept over a reload"
    browser.evaluate(TYPE_IN % json.dumps(["wall", "thin"]))
    saved, status = browser.evaluate(SAVE)
    if saved is not None or status != "Not saved. This cannot be read: Wall":
        yield f"an unreadable wall is saved: {status}"
    browser.evaluate(TYPE_IN % json.dumps(["wall", ".28"]))
    saved, status = browser.evaluate(SAVE)
    if saved is None or not status.startswith("Saved as "):
        yield f"not saved: {status}"
        return
    # Leaving with readings that are not saved is asked about, but not of a machine that never touched the page.
    complaints = [text for text in browser.complaints() if "beforeunload" not in text]
    if complaints:
        yield f"complains: {complaints}"
    file = keep / (job.stem + "-readings.json")
    file.write_text(saved)
    run = subprocess.run([program, "record", str(job), str(file), "--format", "json"], capture_output=True, check=False)
    if run.returncode not in (0, 1, 3):
        yield f"record refuses what was saved: {run.stderr.decode()}"
        return
    record = json.loads(run.stdout)
    judged = {reading["id"]: reading["judged"] for reading in record["readings"]}
    if set(judged.values()) - {"inside", "unread", "outside"} or judged["wall"] != "inside" or judged["circumference"] != "inside":
        yield f"judged {judged}"
    if record["record"]["tapped_by"] != 'RM <b>"&' or record["record"]["latitude"] != 41.51833:
        yield f"recorded {record['record']}"


def check(browser, program, job, keep):
    page = plan_of(program, job, "html")
    plan = json.loads(plan_of(program, job, "json"))
    if plan_of(program, job, "html") != page:
        yield "not the same bytes again"
    yield from check_page(page)
    file = keep / (job.stem + ".html")
    file.write_bytes(page)
    url = file.absolute().as_uri()

    browser.media("screen")
    browser.open(url, PHONE)
    yield from ("phone: " + problem for problem in browser.evaluate(LOOK % PHONE))
    yield from browser.complaints()
    (keep / (job.stem + "-phone.png")).write_bytes(browser.picture())
    yield from check_drawn(browser.evaluate(DRAWN), plan)

    if job.stem == "ductile_iron_direct":
        yield from check_readings(browser, program, job, url, keep)
    browser.open(url, BETWEEN_MARGINS)
    browser.media("print")
    if browser.evaluate("[...document.querySelectorAll('.typed')].some(e => e.getClientRects().length)"):
        yield "boxes to type in on paper"
    yield from ("paper: " + problem for problem in browser.evaluate(LOOK % BETWEEN_MARGINS))
    smallest = browser.evaluate(TYPE)
    if smallest["body"] < BODY_TYPE or smallest["drawings"] < DRAWING_TYPE:
        yield f"type of {smallest} px on paper"
    yield from check_papers(browser, keep, job.stem)


# What is open prints on one to three pages, whatever the paper.
def check_papers(browser, keep, name):
    for paper, (width, height) in PAPERS.items():
        print_out = browser.pdf(width, height)
        (keep / f"{name}-{paper}.pdf").write_bytes(print_out)
        pages = len(re.findall(rb"/Type\s*/Page\b", print_out))
        if not 1 <= pages <= 3:
            yield f"{pages} pages of {paper}"


# A translation is longer: it must find its place on phone and paper as well.
def check_spanish(browser, program, job, keep):
    page = plan_of(program, job, "html", "es")
    yield from check_page(page)
    file = keep / (job.stem + "-es.html")
    file.write_bytes(page)
    browser.media("screen")
    browser.open(file.absolute().as_uri(), PHONE)
    yield from ("Spanish, phone: " + problem for problem in browser.evaluate(LOOK % PHONE))
    (keep / (job.stem + "-es-phone.png")).write_bytes(browser.picture())
    browser.open(file.absolute().as_uri(), BETWEEN_MARGINS)
    browser.media("print")
    yield from ("Spanish, paper: " + problem for problem in browser.evaluate(LOOK % BETWEEN_MARGINS))
    yield from ("Spanish: " + problem for problem in check_papers(browser, keep, job.stem + "-es"))


def main(arguments):
    keep = None
    if "--keep" in arguments:
        at = arguments.index("--keep")
        keep = pathlib.Path(arguments[at + 1])
        keep.mkdir(parents=True, exist_ok=True)
        del arguments[at:at + 2]
    program, *jobs = arguments
    browser_program = find_browser()
    if browser_program is None:
        print("skipped: no Chromium")
        return 77
    failures = 0
    browser = Browser(browser_program)
    try:
        with tempfile.TemporaryDirectory() as scratch:
            for job in map(pathlib.Path, jobs):
                folder = keep or pathlib.Path(scratch)
                problems = [*check(browser, program, job, folder), *check_spanish(browser, program, job, folder)]
                print(("FAIL " if problems else "ok   ") + job.stem)
                for problem in problems:
                    print("     " + problem)
                failures += bool(problems)
    finally:
        browser.close()
    return 1 if failures or not jobs else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
