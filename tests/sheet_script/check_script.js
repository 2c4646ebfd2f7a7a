// Holds the reader in the sheet's script against the program's, over chance texts.
//
//     node check_script.js SHEET_SCRIPT READINGS_PROBE MAINBORE JOB      [MAINBORE_SCRIPT_TEXTS=1000000]
//
// What the script reads, the program reads to the same value, and what the program does not read, the script does not
// either. Where the script reads less, the text is of a kind named below.
'use strict';
const { spawnSync } = require('child_process');
const [scriptFile, probe, program, job] = process.argv.slice(2);
const { reading, outside, leakSaid } = require(require('path').resolve(scriptFile));

let failures = 0;
function fail(text) {
  if (++failures <= 20) console.log('FAIL ' + text);
}

// The boxes as a sheet gives them.
function boxesOf(units) {
  const page = spawnSync(program, ['plan', job, '--format', 'html', '--units', units], { maxBuffer: 1 << 24 }).stdout.toString();
  const list = /<ul class="reads".*?<\/ul>/s.exec(page)[0];
  return [...list.matchAll(/<li ([^>]*)>/g)].map(([, attributes]) => {
    const box = {};
    for (const [, name, value] of attributes.matchAll(/data-(\w+)="([^"]*)"/g)) box[name] = value;
    if (box.from !== undefined) { box.from = Number(box.from); box.to = Number(box.to); }
    return box;
  });
}

let seed = 20260504;
function chance(n) {  // numerical recipes' generator: the same texts each time
  seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
  return Math.floor(seed / 4294967296 * n);
}
const one = list => list[chance(list.length)];
const digits = () => String(chance(one([10, 100, 1000])));
const decimal = () => one([digits(), digits(), digits() + '.' + digits(), '.' + digits(), digits() + '.', '0' + digits(), '1e3', digits() + ',5', '1.5e-2', digits() + '123456789']);
const fraction = () => one(['1/2', '3/4', '1/8', '5/16', '0/4', '5/4', '1/0', digits() + '/' + digits(), '1.5/2', '3/4.5', '7/']);
const sign = () => one(['', '', '', '', '', '', '-', '+', '- ']);
const space = () => one(['', ' ', ' ', '  ', '\t', '\u00a0']);
const unit = () => one(['in', 'IN', 'inch', 'inches', '"', 'in.', '\u201d', '\u2033', 'ft', 'feet', "'", '\u2019', 'mm', 'MM', 'cm', 'm', 'psi', 'PSI',
  'psig', 'kPa', 'kpa', 'bar', 'MPa', 'tsf', 'degF', 'F', 'f', '\u00b0F', '\u00b0C', 'degC', 'C', 'deg', 'turns', 'lbs', '', '', '', 'x', '\u212a', 'k\u0130', '%', 'constructor',
  '__proto__']);
const vulgar = () => one(['\u00bd', '\u00bc', '\u00be', '\u215b', '\u215c', '\u215d', '\u215e']);
const number = () => sign() + one([decimal(), decimal(), fraction(), digits() + one([' ', '-', '\u2013', '  ', '\t']) + fraction(), digits() + one(['', ' ', '-']) + vulgar(),
  vulgar(), vulgar() + digits()]);
const quantity = () => one([
  () => number() + space() + unit(), () => number() + space() + unit(), () => number(),
  () => number() + space() + one(['ft', "'", '\u2019', 'feet']) + space() + one([number(), digits(), fraction()]) + space() + one(['in', '"', '\u201d', 'inches', '', 'mm'])])();
const words = () => one([
  () => one(['direct', 'saddle', 'sound', 'pitted', 'sharpened', 'as before', 'none', 'n/a', '?', '-', 'unknown', 'RM', 'bell 7 ft north', 'a\tb', 'x'.repeat(101), '\u00e9t\u00e9', '"<&>\\', '\ud800']),
  () => digits() + ':' + one(['00', '30', '59', '60', '5']), () => digits(), () => '0' + chance(13) + ':' + one(['15', '45']), () => chance(14) + " o'clock",
  () => one(['2026', '1999', '0999', '26']) + '-' + one(['02', '04', '13', '5']) + '-' + one(['30', '29', '31', '00', '4']) + one(['', '', '', 'T10:00']) ])();
// What crews write of leaks, whole and torn.
const leaks = () => Array.from({ length: 1 + chance(6) }, () => one(['no', 'not', 'none', 'sin', 'ninguna', '0', 'zero', "didn't", 'leak', 'Leaks', 'leaking',
  'drip', 'fuga', 'fugas', 'gotea', 'tight', 'Dry', 'holds', 'OK', 'estanco', 'aguant\u00f3', 'free', 'test', 'prueba', 'de', 'or', 'o', 'and', 'y', 'at', 'visible',
  '70 psi', '15 min', '1\u00bd', '20:30', 'then', 'RM', 'at the seat', 'hay', 'weep', 'press\u00f3', 'leak-tight', '\u00e7']) +
  one(['', '', '', '', ',', '.', ':', ' -', ' \u2013', ';', '?', '!', '/', '\u00a0', "'", '&'])).join(one([' ', ' ', ' ', '', '-']));
// Spoils a text here and there.
function spoilt(text) {
  if (chance(4)) return text;
  const at = chance(text.length + 1);
  return one([() => text.slice(0, at) + text.slice(at + 1), () => text.slice(0, at) + one([...'0123456789-/. \'"ftin+eE°']) + text.slice(at)])();
}

// What the script knowingly does not read though the program does.
function isNarrower(text, box) {
  if (/[eE][+-]?\d/.test(text)) return 'an exponent';
  if (/\d{10}/.test(text)) return 'more than nine digits';
  if (/\d*\.\d*[-/ \t]|\/\d*\./.test(text)) return 'a fraction of decimals';
  if (/o'clock$/.test(text.trim())) return "o'clock";
  if (/tsf/i.test(text)) return 'tons on a square foot';
  if (box.kind === 'day' && /T|^[01]/.test(text)) return 'a day with its time, or long ago';
  if (box.kind === 'choice') return 'a word in other letters';
  if (box.kind === 'whole') return 'a whole number with a sign';
  if (box.kind === 'text' || box.kind === 'leak') return 'a long text';
  if (/^\s*(n\/a|none|unknown|\?|-)\s*$/i.test(text)) return 'a word for nothing';
  return '';
}

const count = Number(process.env.MAINBORE_SCRIPT_TEXTS || 60000);
const boxes = [...boxesOf('us'), ...boxesOf('si')];
const cases = [];
for (let i = 0; i < count; ++i) {
  const box = one(boxes);
  const typed = spoilt(box.kind === 'leak' ? leaks() : chance(5) && ['length', 'pressure', 'temperature', 'number'].includes(box.kind) ? quantity() : words());
  const read = reading(typed, box);
  cases.push({ box, typed, read, text: read ? read.text : typed });
}
const asked = cases.map(one => one.box.name + '\t' + JSON.stringify(one.text)).join('\n') + '\n';
const answers = spawnSync(probe, [], { input: asked, maxBuffer: 1 << 28 }).stdout.toString().split('\n');
if (answers.length !== cases.length + 1) fail(answers.length + ' answers to ' + cases.length);

const narrower = new Map();
let both = 0;
cases.forEach(({ box, typed, read, text }, i) => {
  const answer = answers[i];
  const told = `${box.name} ${JSON.stringify(typed)}: script ${JSON.stringify(read)}, program ${answer}`;
  if (read && answer === 'refused') return fail(told);
  if (!read && (answer === 'refused' || answer === 'unread')) return;
  if (!read) {
    const why = isNarrower(text, box);
    if (!why) return fail(told);
    narrower.set(why, (narrower.get(why) || 0) + 1);
    return;
  }
  ++both;
  if (box.kind === 'leak') {
    const said = leakSaid(read.text, box.words) + '\t' + read.text;
    if (answer !== 'unread' && answer !== said) fail(told + ', says ' + said);
    return;
  }
  if (read.value !== undefined && box.kind !== 'whole') {
    if (Math.abs(read.value - Number(answer)) > 1e-11 * Math.max(1, Math.abs(read.value))) fail(told);
  } else if (box.kind === 'clock') {
    const [hour, minute] = read.text.split(':');
    if (answer !== `${Number(hour)}:${minute || '00'}`) fail(told);
  } else if (box.kind === 'whole') {
    if (Number(answer) !== Number(read.text)) fail(told);
  } else if (answer !== 'unread' && answer !== read.text) {
    fail(told);
  }
});

// The bounds as they are printed are inside, and a step beyond them is not.
let bounds = 0;
for (const box of boxes) {
  for (const [bound, step] of [[box.least, -1], [box.most, 1]]) {
    if (!bound) continue;
    ++bounds;
    const read = reading(bound.replace(/&quot;/g, '"'), box);
    if (!read || outside(read.value, box)) fail(box.name + ': its own bound ' + bound);
    else if (!outside(read.value + step * 1e-6 * Math.max(1, Math.abs(read.value)), box)) fail(box.name + ': beyond ' + bound);
  }
}
console.log(`${count} texts: ${both} read alike, ${[...narrower].map(([why, n]) => n + ' ' + why).join(', ')} by the program alone; ${bounds} bounds`);
if (both < count / 10 || bounds < 10) fail('too few');
process.exit(failures ? 1 : 0);
