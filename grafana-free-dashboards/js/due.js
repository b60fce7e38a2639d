// Due: each part's milestones as ranges, the test that decides each, and what moved and why.

import { get, oneAtATime } from './api.js';
import { Axis } from './axis.js';
import { byId, make, say } from './dom.js';
import { listen } from './live.js';
import { Shell } from './shell.js';
import { capital, nowMs, partName, sentence, standing, told, when } from './words.js';

const AFRESH_MS = 60000;
const MOST_TESTS = 6;
const shell = Shell('Due');

const ms = (time) => Date.parse(time);
const passed = (one) => one.p50 !== undefined && ms(one.p50) <= nowMs();
const arrives = (one) => one.reached && one.p50 !== undefined;
const never = (one) => one.cantTell ? `can't tell: ${told(one.reason)}` : `will not get there in this air${one.reason ? `: ${told(one.reason)}` : ''}`;

function guess(text) {
  return make('span', 'guess', text);
}

function grouped(due, keyOf) {
  const groups = new Map();
  for (const one of due) {
    const key = keyOf(one);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return groups;
}

function track(one, axis, ticks) {
  const el = make('div', 'track');
  el.setAttribute('aria-hidden', 'true');
  for (const tick of ticks) {
    const line = make('i', 'tick');
    line.style.left = `${tick.at}%`;
    el.append(line);
  }
  if (!arrives(one)) {
    el.append(make('span', 'never'));
    return el;
  }
  if (one.p90 && ms(one.p90) <= nowMs()) {
    el.append(make('span', 'before'));
    return el;
  }
  const from = axis.at(ms(one.p10 ?? one.p50));
  const to = one.p90 ? axis.at(ms(one.p90)) : 100;
  const bar = make('span', `bar${one.estimate ? ' rough' : ''}${passed(one) ? ' passed' : ''}`);
  bar.style.left = `${from}%`;
  bar.style.width = `${Math.max(0, to - from)}%`;
  el.append(bar);
  if (one.was) {
    const was = make('span', 'was');
    was.style.left = `${axis.at(ms(one.was))}%`;
    el.append(was);
  }
  const mid = make('span', 'mid');
  mid.style.left = `${axis.at(ms(one.p50))}%`;
  el.append(mid);
  return el;
}

function dates(one) {
  const el = make('div', 'dates');
  const likely = make('p', 'likely');
  el.append(likely);
  if (!arrives(one)) {
    say(likely, capital(never(one)));
    return el;
  }
  likely.append(guess(passed(one) ? `${standing(one.milestone)} since about ${when(one.p50)}` : `likely ${when(one.p50)}`));
  const early = one.p10 && !passed(one) ? `one in ten by ${when(one.p10)}; ` : '';
  const late = one.p90 ? `nine in ten by ${when(one.p90)}` : 'no date for the slowest';
  el.append(make('p', 'range', early + late));
  if (one.until) el.append(make('p', 'range', `and until ${when(one.until)}`));
  return el;
}

function row(one, axis, ticks) {
  const li = make('li');
  li.append(make('span', 'name', capital(one.milestone)), track(one, axis, ticks), dates(one));
  if (one.was && arrives(one)) {
    const why = one.reason ? `: ${told(one.reason)}` : '';
    li.append(make('p', 'moved', `Was ${when(one.was)} \u2192 now ${when(one.p50)}${why}.`));
  }
  return li;
}

function axisRow(axis, ticks) {
  const el = make('div', 'axis');
  el.setAttribute('aria-hidden', 'true');
  const line = make('div', 'ticks');
  for (const tick of ticks) {
    const label = make('span', '', tick.label);
    label.style.left = `${tick.at}%`;
    line.append(label);
  }
  el.append(line);
  return el;
}

function part(path, milestones, axis, ticks) {
  const el = make('div', 'part');
  const [, ...rest] = path.split('/');
  el.append(make('h3', '', rest.join(' \u203a ')));
  const test = milestones.find((one) => one.test && arrives(one) && (!one.p90 || ms(one.p90) > nowMs()));
  if (test) el.append(make('p', 'next', `Next test, ${passed(test) ? 'now' : `from ${when(test.p50)}`}: ${sentence(test.test)}`));
  const bars = make('ul', 'bars');
  milestones.forEach((one) => bars.append(row(one, axis, ticks)));
  el.append(axisRow(axis, ticks), bars);
  return el;
}

// Per cent of a track that a tick's words need.
function leastApart() {
  const width = innerWidth <= 896 ? innerWidth - 70 : Math.min(innerWidth, 1408) - 560;
  return Math.min(45, (100 * 66) / width);
}

function pieces(due) {
  const ends = due.flatMap((one) => [one.p90, one.p50, one.was]).filter(Boolean).map(ms);
  const axis = Axis(nowMs(), Math.max(nowMs(), ...ends));
  const ticks = axis.ticks(leastApart());
  return [...grouped(due, (one) => one.part.split('/')[0])].map(([name, ofPiece]) => {
    const el = make('section', 'panel piece');
    el.append(make('h2', '', name));
    for (const [path, milestones] of grouped(ofPiece, (one) => one.part)) {
      el.append(part(path, milestones, axis, ticks));
    }
    return el;
  });
}

// Of what a part has passed, only the furthest is still worth a test.
function furthest(one, due) {
  return !due.some((other) => other.part === one.part && passed(other) && other.test && ms(other.p50) > ms(one.p50));
}

function tests(due) {
  return due
    .filter((one) => one.test && arrives(one))
    .filter((one) => !passed(one) || (furthest(one, due) && nowMs() - ms(one.p50) < 86400000))
    .sort((a, b) => ms(a.p50) - ms(b.p50))
    .slice(0, MOST_TESTS)
    .map((one) => {
      const li = make('li');
      li.append(
        make('span', 'when', passed(one) ? 'now' : `from ${when(one.p50)}`),
        make('span', 'what', `${partName(one.part)}, ${one.milestone}`),
        make('span', 'how', sentence(one.test)),
      );
      return li;
    });
}

function tableRow(one) {
  const row = make('tr');
  const time = (value) => (value ? when(value) : '\u2014');
  const head = make('th', '', partName(one.part));
  head.scope = 'row';
  row.append(head);
  const cells = arrives(one)
    ? [one.milestone + (one.estimate ? ' (rough)' : ''), time(one.p10), time(one.p50), time(one.p90), one.until ? when(one.until) : 'no late end']
    : [one.milestone, ...(one.cantTell ? ["can't", 'tell', '\u2014'] : ['will not', 'get there', 'in this air']), '\u2014'];
  cells.push(time(one.was), one.reason === undefined ? '\u2014' : told(one.reason), one.test ?? '\u2014');
  cells.forEach((cell) => row.append(make('td', '', cell)));
  return row;
}

function lead(due) {
  if (due.length === 0) return 'Nothing is drying. The first coat on a part starts its dates.';
  const coming = due.filter((one) => arrives(one) && !passed(one)).sort((a, b) => ms(a.p50) - ms(b.p50))[0];
  const first = coming
    ? `Next: ${partName(coming.part)}, ${coming.milestone}, likely ${when(coming.p50)}.`
    : due.some(arrives) && 'Everything reckoned has come; the tests decide.';
  const named = (kind) => due.filter(kind).map((one) => `${partName(one.part)} (${one.milestone})`).join(', ');
  const stuck = named((one) => !arrives(one) && !one.cantTell);
  const untold = named((one) => one.cantTell);
  return [first, stuck && `Will not get there in this air: ${stuck}.`, untold && `Can't tell of: ${untold}.`].filter(Boolean).join(' ');
}

function update(due) {
  say(byId('lead'), lead(due));
  const rows = tests(due);
  byId('tests-panel').hidden = rows.length === 0;
  byId('tests').replaceChildren(...rows);
  byId('legend').hidden = due.length === 0;
  byId('pieces').replaceChildren(...pieces(due));
  byId('table-panel').hidden = due.length === 0;
  byId('table').replaceChildren(...due.map(tableRow));
}

const afresh = oneAtATime(async () => {
  try {
    const [now, { due }] = await Promise.all([get('now'), get('due')]);
    shell.show(now);
    update(due);
  } catch (error) {
    if (error.status) say(byId('lead'), error.message);
  }
});

listen(['milestone', 'entry'], {
  onEvent: afresh,
  onUp() {
    shell.up();
    afresh();
  },
  onDown: shell.down,
});
afresh();
setInterval(afresh, AFRESH_MS);
