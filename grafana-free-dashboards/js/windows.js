// The hours in which a coat may be brushed: a list of windows, and a strip of every hour.

import { byId, make, say } from './dom.js';
import { clock, shortDay, when } from './words.js';

const HOUR_MS = 3600000;
const ms = (time) => Date.parse(time);
const rank = (share) => (share >= 0.8 ? 'fine' : share >= 0.5 ? 'even' : 'poor');
const MARK = { fine: '\u25cf', even: '\u25d4', poor: '\u00b7' };

function until(window) {
  return shortDay(window.from) === shortDay(window.until) ? clock(window.until) : when(window.until);
}

function windowRow(window) {
  const li = make('li', window.usual ? 'usual' : '');
  const share = `every hour fine in ${Math.round(100 * window.share)} of 100 courses or more`;
  li.append(
    make('span', 'when', `${when(window.from)} to ${until(window)}`),
    make('span', '', window.usual ? `usual, no forecast: ${share}` : share),
  );
  return li;
}

function cell(hour) {
  const el = make('span', `hour${Number(clock(hour.from).slice(0, 2)) % 6 === 0 ? ' told' : ''}`);
  const kind = rank(hour.share);
  const box = make('i', `cell ${kind}${hour.usual ? ' usual' : ''}`);
  box.append(make('span', 'mark', MARK[kind]), make('span', 'number', String(Math.round(100 * hour.share))));
  el.append(box, make('span', 'of-day', clock(hour.from).slice(0, 2)));
  return el;
}

function day(hours) {
  const el = make('div', 'day');
  const row = make('div', 'hours');
  const first = Number(clock(hours[0].from).slice(0, 2));
  for (let gone = 0; gone < first; gone += 1) {
    const empty = make('span', 'hour');
    empty.append(make('i', 'cell none'));
    row.append(empty);
  }
  row.append(...hours.slice(0, 25 - first).map(cell));
  el.append(make('span', 'name', shortDay(hours[0].from)), row);
  return el;
}

function days(hours) {
  const byDay = new Map();
  for (const hour of hours) {
    const name = shortDay(hour.from);
    byDay.set(name, [...(byDay.get(name) ?? []), hour]);
  }
  return [...byDay.values()].map(day);
}

export function showWindows({ windows, hours, promised, finishTitle, basis, outdoors }) {
  byId('windows').hidden = windows.length === 0;
  byId('windows').replaceChildren(...windows.map(windowRow));
  const told = promised ? `Hours in which ${finishTitle} is fine in at least 8 of 10 courses the air may take.` : 'No window can be promised.';
  const young = { stays: ' Less than a day of this room is known.', learning: ' This room is known for a short time only; the shares are rough.', none: '' }[basis] ?? '';
  say(byId('windows-note'), told + young + (outdoors ? ' An outdoor forecast is taken in.' : ''));
  const known = hours.filter((hour) => ms(hour.from) + HOUR_MS > ms(hours[0].from));
  byId('strip').hidden = known.length === 0;
  byId('strip').replaceChildren(...days(known));
}
