// Readings in the boxes of a field sheet: each is read as the program reads it, held against its stop number, and saved as
// the readings file that "mainbore record" takes. Where it reads less than the program, it refuses.
// No less-than sign and no ampersand stand here, so that the page reads the same as HTML and as XML.
'use strict';
(function () {
  const mm = 1 / 25.4;
  const kpa = 1000 / 4.4482216152605 * 0.0254 * 0.0254;
  // To base units: inches, psi, degrees Fahrenheit.
  const units = {
    length: { in: [1], inch: [1], inches: [1], '"': [1], ft: [12], foot: [12], feet: [12], "'": [12],
      mm: [mm], cm: [10 * mm], m: [1000 * mm] },
    pressure: { psi: [1], psig: [1], kpa: [kpa], bar: [100 * kpa], mpa: [1000 * kpa] },
    temperature: { degf: [1, 0], f: [1, 0], '\u00b0f': [1, 0], degc: [1.8, 32], c: [1.8, 32], '\u00b0c': [1.8, 32] },
    number: {},
  };
  const feet = ['ft', 'foot', 'feet', "'"];
  const inches = ['in', 'inch', 'inches', '"'];
  const vulgar = { '\u00bd': '1/2', '\u00bc': '1/4', '\u00be': '3/4', '\u215b': '1/8', '\u215c': '3/8', '\u215d': '5/8',
    '\u215e': '7/8' };

  // What a phone's keyboard makes of quotes, dashes, spaces and fractions, as the program has them.
  function plain(text) {
    return text.replace(/[\u00a0\u2009\u202f]/g, ' ').replace(/[\u2018\u2019\u2032]/g, "'")
      .replace(/[\u201c\u201d\u2033]/g, '"').replace(/[\u2010-\u2013\u2212]/g, '-')
      .replace(/(\d?)([\u00bc-\u00be\u215b-\u215e])(?![\d/])/g, (all, whole, sign) => (whole ? whole + '-' : '') + vulgar[sign])
      .replace(/^[ \t]+|[ \t]+$/g, '');
  }

  // A number at the head of a text, and what comes behind it: 12, 1.5, 3/4, 1-1/4, 1 1/4. Nothing where there is none.
  function numberOf(text, inFractions) {
    const found = /^(?:(\d{1,9})[- \t](\d{1,9})\/(\d{1,9})|(\d{1,9})\/(\d{1,9})|(\d{1,9}(?:\.\d{0,9})?|\.\d{1,9}))(?![\d./])/.exec(text);
    if (!found) return null;
    const rest = text.slice(found[0].length);
    if (found[6] !== undefined) return { value: Number(found[6]), rest };
    const mixed = found[1] !== undefined;
    const part = mixed ? found[2] / found[3] : found[4] / found[5];
    if (!inFractions || !(1 > part) || (mixed ? !(part > 0) : false)) return null;
    return { value: (mixed ? Number(found[1]) : 0) + part, rest };
  }

  // The unit at the head of a text: up to a space, or to a digit behind a quote. Nothing where the kind has no such unit.
  function unitOf(text, kind) {
    const word = /^[^ \t]*?(?:['"](?=\d)|(?=[ \t]|$))/.exec(text)[0];
    const name = word.replace(/[A-Z]/g, letter => letter.toLowerCase());
    const known = Object.prototype.hasOwnProperty.call(units[kind], name);
    return known ? { name, size: units[kind][name], rest: text.slice(word.length).replace(/^[ \t]+/, '') } : null;
  }

  // A quantity: its text with the unit it was read in, and its value in base units; nothing where it cannot be read. A bare
  // number is in the unit of its box.
  function quantity(typed, kind, boxUnit) {
    const text = plain(typed);
    const signed = /^[+-]/.test(text);
    const number = numberOf(signed ? text.slice(1) : text, kind === 'length' ? true : kind === 'number');
    if (!number) return null;
    const first = text[0] === '-' ? -number.value : number.value;
    const behind = number.rest.replace(/^[ \t]+/, '');
    if (kind === 'number') return behind === '' ? settled(text, first) : null;
    if (behind === '') return boxUnit ? quantity(text + ' ' + boxUnit, kind, '') : null;
    const unit = unitOf(behind, kind);
    if (!unit) return null;
    let base = first * unit.size[0] + (unit.size[1] || 0);
    if (unit.rest !== '') {
      // Feet, then inches.
      const second = feet.includes(unit.name) ? /^\d/.test(unit.rest) ? numberOf(unit.rest, true) : null : null;
      const inch = second ? unitOf(second.rest.replace(/^[ \t]+/, ''), kind) : null;
      if (!inch || inch.rest !== '' || !inches.includes(inch.name)) return null;
      base += 0 > first ? -second.value : second.value;
    }
    return settled(text, base);
  }
  function settled(text, base) {
    return Number.isFinite(base) ? { text, value: Number(base.toPrecision(12)) } : null;
  }

  const words = {
    text: text => text.length > 100 ? false : !/[\u0000-\u001f\u007f-\u009f]|[\ud800-\udfff]/u.test(text),
    day: text => {
      const at = /^(19|20|21)\d\d-\d\d-\d\d$/.test(text) ? new Date(text + 'T00:00:00Z') : new Date(NaN);
      return Number.isFinite(at.getTime()) ? at.toISOString().slice(0, 10) === text : false;
    },
    time: text => /^([01]?\d|2[0-3]):[0-5]\d$/.test(text),
    clock: text => /^(0?[1-9]|1[0-2])(:[0-5]\d)?$/.test(text),
    whole: text => /^\d{1,9}$/.test(text),
    leak: text => words.text(text),
    choice: (text, box) => box.words.split('|').some(word => word.split('=')[0] === text),
  };

  // What the text of a leak check says, by the program's lists: "holds", "leaks", or "unsure" where it is no plain statement.
  function leakSaid(typed, lists) {
    const [holding, leaking, negates, again, noneBehind, tightBehind, testBehind, testBefore, either, ends, filler,
      between, pressures, times, asks] =
      lists.split('|').map(list => list.split(' '));
    const folded = typed.replace(/\u2019/g, "'").replace(/[\u00bc-\u00be]/g, '1').replace(/\u00a0/g, ' ')
      .replace(/\u2013/g, ',').replace(/[\u00e1\u00c1]/g, 'a').replace(/[\u00e9\u00c9]/g, 'e').replace(/[\u00ed\u00cd]/g, 'i')
      .replace(/[\u00f3\u00d3]/g, 'o').replace(/[\u00fa\u00da\u00fc\u00dc]/g, 'u').replace(/[\u00f1\u00d1]/g, 'n')
      .replace(/[A-Z]/g, letter => letter.toLowerCase());
    const tokens = [...folded.matchAll(/((?:[a-z]|'(?=[a-z]))+)(?:-(?=[a-z]))?|\d(?:\d|[.,/:-](?=\d))*|[^ \t'"a-z\d]/gu)]
      .map(found => found[1] === undefined ? found[0] : found[1].replace(/'/g, '')).filter(token => token !== '');
    let negated = false, carried = false, holds = false, leaks = false, unclear = false;
    const state = tight => {
      if (tight !== negated) holds = true; else leaks = true;
      carried = tight ? false : negated;
      negated = false;
    };
    const endOfClause = () => { unclear = unclear || negated; negated = false; };
    for (let at = 0; tokens.length > at; ++at) {
      const token = tokens[at];
      const before = carried;
      carried = false;
      if (holding.includes(token)) state(true);
      else if (negates.includes(token)) {
        if (negated ? !again.includes(token) : false) unclear = true;
        negated = true;
      } else if (leaking.some(word => token.startsWith(word))) {
        const apart = [':', '=', '-'].includes(tokens[at + 1]) ? 2 : 1;
        const named = token === 'leak';
        if (named ? testBehind.includes(tokens[at + 1]) : false) ++at;
        else if (tokens[at - 1] === 'de' ? testBefore.includes(tokens[at - 2]) : false) continue;
        else if (named ? tightBehind.includes(tokens[at + 1]) : false) { ++at; state(true); }
        else if (negated ? false : noneBehind.includes(tokens[at + apart])) { at += apart; holds = true; }
        else state(false);
      } else if (either.includes(token)) negated = negated || before;
      else if (!/^[a-z\d]/.test(token)) {
        if (!',;.:=-()/!\x26+@'.includes(token)) unclear = true;
        endOfClause();
      } else if (ends.includes(token)) endOfClause();
      else if (/^\d/.test(token) ? false : !filler.includes(token)) unclear = true;
    }
    endOfClause();
    const isLeak = token => token === undefined ? false : leaking.some(word => token.startsWith(word));
    const isWord = token => token === undefined ? false : /^[a-z\d]/.test(token);
    const joins = token => [':', '=', '-'].includes(token);
    // Past the "no" at this place and the leak that it denies; 0 where it denies another thing.
    const pastDenial = place => {
      const denied = joins(tokens[place - 1]) ? tokens[place - 2] : tokens[place - 1];
      if (isLeak(denied) ? noneBehind.includes(tokens[place]) : false) return isWord(tokens[place + 1]) ? 0 : place + 1;
      for (++place; between.includes(tokens[place]) || again.includes(tokens[place]);) ++place;
      return isLeak(tokens[place]) ? place + 1 : 0;
    };
    // Each part between commas says that it holds or how it was checked, by one pressure and one time; each "no" is a leak's.
    const isPlain = () => {
      if (asks.includes(tokens[0])) return false;
      let said = false, ofPressure = 0, ofTime = 0;
      for (let place = 0; tokens.length > place;) {
        const token = tokens[place], behind = tokens[place + 1];
        if (negates.includes(token)) {
          place = pastDenial(place);
          if (place === 0) return false;
          said = true;
        } else if (token === 'leak' ? tightBehind.includes(behind) : false) {
          place += 2;
          said = true;
        } else if (/^\d/.test(token)) {
          if (pressures.includes(behind)) ++ofPressure; else if (times.includes(behind)) ++ofTime; else return false;
          if (ofPressure > 1 || ofTime > 1) return false;
          place += 2;
          said = true;
        } else if (isWord(token) || joins(token)) {
          if (joins(token) ? !isWord(behind) : false) return false;
          said = said || holding.includes(token);
          ++place;
        } else {
          if (!said) return false;
          said = ++place === tokens.length;
        }
      }
      return said;
    };
    return leaks ? 'leaks' : holds ? unclear ? 'unsure' : isPlain() ? 'holds' : 'unsure' : 'unsure';
  }

  // What was typed in a box of this kind, as { text, value }; the value of words is their number, or nothing.
  function reading(typed, box) {
    if (units[box.kind]) {
      const read = quantity(typed, box.kind, box.unit);
      return read ? within(read.value, box) ? read : null : null;
    }
    const text = typed.replace(/^[ \t]+|[ \t]+$/g, '');
    if (!words[box.kind](text, box)) return null;
    if (box.kind !== 'whole') return { text };
    return within(Number(text), box) ? { text, value: Number(text) } : null;
  }
  // What can be, by the table of readings.
  function within(value, box) {
    return box.from === undefined ? true : value >= box.from ? box.to >= value : false;
  }

  // Against the bounds as they are printed. Noise is of conversion.
  function outside(value, box) {
    const bound = text => quantity(text, box.kind, '').value;
    const noise = limit => 1e-9 * Math.max(1, Math.abs(limit));
    if (box.least) { const low = bound(box.least); if (low - noise(low) > value) return true; }
    if (box.most) { const high = bound(box.most); if (value > high + noise(high)) return true; }
    return false;
  }

  if (typeof document === 'undefined') {  // under a test
    module.exports = { reading, outside, leakSaid };
    return;
  }

  // ---- the page

  let unsaved = false;
  addEventListener('beforeunload', event => {
    if (!unsaved) return;
    event.preventDefault();
    event.returnValue = '';
  });

  function made(name, properties, parent) {
    const element = Object.assign(document.createElement(name), properties);
    parent.append(element);
    return element;
  }

  // A tab's own storage outlives a reload; a browser may refuse it to a file.
  function stored(key) {
    try { return JSON.parse(sessionStorage.getItem(key)) || {}; } catch (refused) { return {}; }
  }
  function store(key, typed) {
    try { sessionStorage.setItem(key, JSON.stringify(typed)); } catch (refused) { return; }
  }

  function open(sheet) {
    const list = sheet.querySelector('.reads');
    if (!list) return;
    const say = list.dataset;
    const key = 'readings ' + list.outerHTML;
    const typed = stored(key);
    const boxes = new Map();

    for (const item of list.children) {
      const data = item.dataset;
      boxes.set(data.name, { name: data.name, label: item.textContent, kind: data.kind, unit: data.unit, least: data.least, most: data.most,
        from: data.from === undefined ? undefined : Number(data.from), to: Number(data.to), words: data.words, places: [] });
    }
    const record = sheet.querySelector('.record');
    const places = [...sheet.querySelectorAll('[data-reads]')].map(at => [at, at.dataset.reads]);
    const onForm = new Set(places.map(place => place[1]));
    const more = made('div', { className: 'typed' }, record);
    for (const box of boxes.values()) {
      if (onForm.has(box.name)) continue;
      const line = made('span', { textContent: box.label + ' ' }, more);
      places.push([made('i', { className: 'blank' }, line), box.name]);
    }

    for (const [at, name] of places) {
      if (!boxes.has(name)) boxes.set(name, { name, label: say.hold, kind: 'text', places: [] });
      const box = boxes.get(name);
      const input = made(box.kind === 'choice' ? 'select' : 'input', { className: 'typed' }, at);
      input.setAttribute('aria-label', box.label);
      if (box.kind === 'choice') {
        made('option', {}, input);
        for (const word of box.words.split('|')) {
          const [value, shown] = word.split('=');
          made('option', { value, textContent: shown }, input);
        }
      } else {
        input.type = box.kind === 'day' ? 'date' : box.kind === 'time' ? 'time' : 'text';
        input.autocomplete = 'off';
        input.spellcheck = false;
        input.maxLength = 100;
        input.placeholder = box.unit || '';
      }
      box.places.push({ input, mark: made('output', { className: 'typed' }, at) });
      input.addEventListener('input', () => {
        typed[name] = input.value;
        unsaved = true;
        status.textContent = '';
        store(key, typed);
        mark(box);
      });
    }

    const bar = made('p', { className: 'typed save' }, record);
    const button = made('button', { type: 'button', textContent: say.save }, bar);
    const status = made('output', {}, bar);
    button.addEventListener('click', save);
    for (const box of boxes.values()) mark(box);

    // One reading may stand in two places of the sheet.
    function mark(box) {
      const text = typed[box.name] || '';
      const read = text.trim() === '' ? undefined : reading(text, box);
      let word = '';
      if (read === null) word = say.unreadable;
      else if (read) {
        if (box.least || box.most) word = outside(read.value, box) ? say.outside : say.inside;
        if (box.kind === 'leak') word = say[leakSaid(read.text, box.words)];
        if (read.text !== text.trim()) word = read.text + (word ? ': ' + word : '');
      }
      for (const place of box.places) {
        if (place.input.value !== text) place.input.value = text;
        place.mark.textContent = word;
      }
    }

    function save() {
      const file = { format: 1 };
      if (say.order) file.order = say.order;
      for (const box of boxes.values()) {
        const text = typed[box.name] || '';
        if (text.trim() === '') continue;
        const read = reading(text, box);
        if (!read) {
          status.textContent = say.first + ' ' + box.label;
          box.places[0].input.focus();
          return;
        }
        const hold = /^holds\.(.+)\.(found|by)$/.exec(box.name);
        if (!hold) file[box.name] = read.text;
        else {
          file.holds = file.holds || {};
          file.holds[hold[1]] = Object.assign(file.holds[hold[1]] || {}, { [hold[2]]: read.text });
        }
      }
      const name = (say.order || 'tap').replace(/[^A-Za-z0-9_-]+/g, '_') + '-readings.json';
      const url = URL.createObjectURL(new Blob([JSON.stringify(file, null, 1) + '\n'], { type: 'application/json' }));
      const link = made('a', { href: url, download: name, hidden: true }, bar);
      link.click();
      link.remove();
      setTimeout(() => URL.revokeObjectURL(url), 60000);
      unsaved = false;
      status.textContent = say.saved + ' ' + name;
    }
  }

  for (const sheet of document.querySelectorAll('.sheet')) open(sheet);
})();
