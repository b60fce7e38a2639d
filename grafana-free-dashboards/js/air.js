// Air: two days as they were, three as they may be, and the hours in which a coat may be brushed.

import { get, oneAtATime } from './api.js';
import { AheadChart } from './ahead-chart.js';
import { byId, make, say } from './dom.js';
import { listen } from './live.js';
import { Shell } from './shell.js';
import { showWindows } from './windows.js';
import { nowMs, onUnits, percent, temperature, when } from './words.js';

const PAST_MS = 48 * 3600000;
const EVERY_MIN = 10;
const AFRESH_MS = 300000;
const HOUR_MS = 3600000;

const asked = new URLSearchParams(location.search);
const shell = Shell('Air');
const chart = AheadChart();
let shown = null;

function choose(id, items, wanted) {
  const select = byId(id);
  if (select.children.length === 0) {
    select.append(...items.map(({ name, title }) => {
      const option = make('option', '', title);
      option.value = name;
      return option;
    }));
    select.value = wanted;
  }
  return select.value;
}

const hourOf = (time) => Math.floor(Date.parse(time) / HOUR_MS);

function byHour(items) {
  const rows = new Map();
  for (const item of items) {
    if (!rows.has(hourOf(item.at ?? item.from))) rows.set(hourOf(item.at ?? item.from), item);
  }
  return rows;
}

function cells(hour, { measured, wood, ahead, fine }) {
  const was = measured.get(hour);
  const next = was ? undefined : ahead.get(hour);
  const air = was ?? next;
  const board = wood.get(hour);
  const share = was ? undefined : fine.get(hour)?.share;
  return [
    when(hour * HOUR_MS),
    was ? 'measured' : next ? (next.usual ? 'usual for this hour' : 'forecast') : 'no reading',
    air ? temperature(air.airTempC) : '\u2014',
    next ? `${temperature(next.airTempP10C)} to ${temperature(next.airTempP90C)}` : '\u2014',
    next ? `${percent(next.rhPct)} (${percent(next.rhP10Pct)} to ${percent(next.rhP90Pct)})` : air ? percent(air.rhPct) : '\u2014',
    next ? `${temperature(next.dewPointC)} (${temperature(next.dewPointP10C)} to ${temperature(next.dewPointP90C)})` : air ? temperature(air.dewPointC) : '\u2014',
    board ? temperature(board.woodTempC) : '\u2014',
    share === undefined ? '\u2014' : String(Math.round(100 * share)),
  ];
}

function table({ readings, forecast, windows }) {
  const hours = {
    measured: byHour(readings.points),
    wood: byHour(readings.wood),
    ahead: byHour(forecast.hours.slice(1)),
    fine: byHour(windows.hours),
  };
  const all = [...hours.measured.keys(), ...hours.ahead.keys()];
  const rows = [];
  for (let hour = Math.min(...all); all.length > 0 && hour <= Math.max(...all); hour += 1) {
    const row = make('tr');
    cells(hour, hours).forEach((cell, index) => {
      const el = make(index === 0 ? 'th' : 'td', '', cell);
      if (index === 0) el.scope = 'row';
      row.append(el);
    });
    rows.push(row);
  }
  byId('table').replaceChildren(...rows);
}

function draw() {
  if (shown === null) return;
  say(byId('lead'), shown.windows.sentence);
  showWindows(shown.windows);
  chart.show(shown);
  table(shown);
}

const afresh = oneAtATime(async () => {
  try {
    const [now, { finishes }] = await Promise.all([get('now'), get('finishes')]);
    shell.show(now);
    const room = choose('room', now.rooms.map((one) => ({ name: one.room, title: one.room })), asked.get('room') ?? now.room);
    const usual = now.sessions.find((one) => one.room === room)?.finish;
    const finish = choose('finish', finishes, asked.get('finish') ?? usual ?? finishes[0].name);
    const from = new Date(nowMs() - PAST_MS).toISOString();
    const path = `rooms/${encodeURIComponent(room)}`;
    const [readings, forecast, windows] = await Promise.all([
      get(`${path}/readings?from=${from}&every=${EVERY_MIN}min`),
      get(`${path}/forecast`),
      get(`windows?room=${encodeURIComponent(room)}&finish=${encodeURIComponent(finish)}`),
    ]);
    shown = { room, readings, forecast, windows };
    draw();
  } catch (error) {
    if (error.status) say(byId('lead'), error.message);
  }
});

byId('ask').addEventListener('change', afresh);
byId('ask').addEventListener('submit', (event) => {
  event.preventDefault();
  afresh();
});
onUnits(draw);
listen(['entry'], {
  onEvent: afresh,
  onUp() {
    shell.up();
    afresh();
  },
  onDown: shell.down,
});
afresh();
setInterval(afresh, AFRESH_MS);
