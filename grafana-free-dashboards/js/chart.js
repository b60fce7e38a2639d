// The air since yesterday and the hours to come. Gaps stay gaps; what is guessed is broken.

import uPlot from '/lib/uplot/uPlot.esm.js';
import { get } from './api.js';
import { byId, make, say } from './dom.js';
import { colour, drawn, hatch, label, sheet } from './paper.js';
import { clock, degrees, onUnits, nowMs, percent, temperature, when } from './words.js';

const PAST_MS = 24 * 3600000;
const AHEAD_MS = 12 * 3600000;
const EVERY_S = 300;
const LONGEST_STEP_S = 1500;
const seconds = (time) => Date.parse(time) / 1000;

// Columns on one time axis. undefined = another's time, drawn through; null = a gap, not drawn.
function columns({ points, wood, gaps, expected }) {
  const rows = new Map();
  const put = (at, column, value) => {
    const row = rows.get(at) ?? [undefined, undefined, undefined, undefined, undefined];
    row[column] = value;
    rows.set(at, row);
  };
  const line = (items, column, valueOf) => {
    items.forEach((item, index) => {
      const at = seconds(item.at);
      put(at, column, degrees(valueOf(item)));
      const next = items[index + 1];
      if (next && seconds(next.at) - at > LONGEST_STEP_S) put(at + 1, column, null);
    });
  };
  line(points, 0, (point) => point.airTempC);
  line(points, 1, (point) => point.dewPointC);
  line(wood, 2, (point) => point.woodTempC);
  for (const gap of gaps) {
    put(seconds(gap.from) + 1, 0, null);
    put(seconds(gap.from) + 1, 1, null);
  }
  const last = points.at(-1);
  const ahead = expected.length > 0 && last ? [last, ...expected] : expected;
  line(ahead, 3, (point) => point.airTempC);
  line(ahead, 4, (point) => point.dewPointC);
  const times = [...rows.keys()].sort((a, b) => a - b);
  return [times, ...[0, 1, 2, 3, 4].map((column) => times.map((at) => rows.get(at)[column]))];
}

function span(items, valueOf) {
  const values = items.map(valueOf);
  return `${temperature(Math.min(...values))} to ${temperature(Math.max(...values))}`;
}

function describe({ points, gaps, expected }, room) {
  if (points.length === 0) return `No readings of the ${room} since yesterday.`;
  const missing =
    gaps.length === 0
      ? 'No gaps.'
      : `No readings ${gaps.map((gap) => `from ${clock(gap.from)} to ${clock(gap.to)}`).join(', ')}; nothing is drawn there.`;
  const ahead =
    expected.length === 0
      ? 'Too few days are known to guess the hours to come.'
      : `The hours to ${when(expected.at(-1).at)} are a guess from the room's last days.`;
  return (
    `${room}, last 24 hours: air ${span(points, (point) => point.airTempC)}, ` +
    `dew point ${span(points, (point) => point.dewPointC)}. ${missing} ${ahead}`
  );
}

function hourly({ points, wood, gaps, expected }) {
  const rows = [];
  const pick = (items, from) => items.find((item) => seconds(item.at) >= from && seconds(item.at) < from + 3600);
  const first = points.length > 0 ? points[0] : expected[0];
  const last = expected.at(-1) ?? points.at(-1);
  if (!first) return rows;
  for (let from = Math.floor(seconds(first.at) / 3600) * 3600; from <= seconds(last.at); from += 3600) {
    const measured = pick(points, from);
    const guessed = measured ? undefined : pick(expected, from);
    const board = pick(wood, from);
    const air = measured ?? guessed;
    rows.push([
      when((air ? seconds(air.at) : from) * 1000),
      air ? temperature(air.airTempC) : '\u2014',
      air ? percent(air.rhPct) : '\u2014',
      air ? temperature(air.dewPointC) : '\u2014',
      board ? temperature(board.woodTempC) : '\u2014',
      measured ? 'measured' : guessed ? 'guess' : 'no reading',
    ]);
  }
  return rows;
}

export function Chart() {
  const box = byId('chart');
  let room = null;
  let data = null;
  let plot = null;

  function background(u) {
    const { ctx: context, bbox } = u;
    const at = (time) => u.valToPos(time, 'x', true);
    const words = (text, x, align) => label(u, text, x, align);
    for (const gap of data.gaps) {
      const left = Math.max(at(seconds(gap.from)), bbox.left);
      const right = Math.min(at(seconds(gap.to)), bbox.left + bbox.width);
      if (right > left) {
        hatch(context, left, right - left, bbox.top, bbox.height);
        if (right - left > 70 * devicePixelRatio) words('no readings', (left + right) / 2, 'center');
      }
    }
    const now = at(nowMs() / 1000);
    if (now > bbox.left && now < bbox.left + bbox.width) {
      context.fillStyle = colour('--sunk');
      context.fillRect(now, bbox.top, bbox.left + bbox.width - now, bbox.height);
      context.fillStyle = colour('--ink');
      context.fillRect(now - 1, bbox.top, 2, bbox.height);
      words('now', now - 6 * devicePixelRatio, 'right');
      if (bbox.left + bbox.width - now > 70 * devicePixelRatio) words('a guess', now + 6 * devicePixelRatio, 'left');
    }
  }

  const options = () =>
    sheet(
      box,
      [
        drawn('air', '--air', { width: 3.5 }),
        drawn('dew point', '--dew', { width: 2 }),
        drawn('wood', '--wood', { width: 4, dash: [1, 7], cap: 'round' }),
        drawn('air, guessed', '--air', { width: 2.5, dash: [7, 6] }),
        drawn('dew point, guessed', '--dew', { width: 2, dash: [7, 6] }),
      ],
      background,
    );

  function words() {
    say(byId('chart-words'), describe(data, room));
    box.setAttribute('aria-label', `Air, wood and dew point in the ${room}`);
    byId('chart-table').replaceChildren(
      ...hourly(data).map((cells) => {
        const row = make('tr');
        cells.forEach((cell, index) => {
          const el = make(index === 0 ? 'th' : 'td', '', cell);
          if (index === 0) el.scope = 'row';
          row.append(el);
        });
        return row;
      }),
    );
  }

  function draw() {
    if (data === null) return;
    plot?.destroy();
    plot = new uPlot(options(), columns(data), box);
    words();
  }

  async function load() {
    const wanted = room;
    const from = new Date(nowMs() - PAST_MS).toISOString();
    const to = new Date(nowMs() + AHEAD_MS).toISOString();
    const answer = await get(
      `rooms/${encodeURIComponent(wanted)}/readings?from=${from}&to=${to}&every=${EVERY_S / 60}min`,
    );
    if (wanted !== room) return;
    data = answer;
    draw();
  }

  onUnits(draw);
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', draw);
  new ResizeObserver(() => plot?.setSize({ width: box.clientWidth, height: box.clientHeight })).observe(box);
  setInterval(() => room !== null && load().catch(() => {}), EVERY_S * 1000);

  return {
    show(name) {
      if (name === room || name === '') return;
      room = name;
      load().catch(() => say(byId('chart-words'), 'The readings could not be fetched; they are asked for again in 5 min.'));
    },
    // A reading just taken: drawn at once, fetched whole with the next load.
    add(event) {
      if (data === null || event.room !== room) return;
      const air = event.air?.air;
      const newest = data.points.at(-1);
      if (air && (!newest || seconds(air.at) > seconds(newest.at))) {
        data.points.push({ at: air.at, airTempC: air.airTempC, rhPct: air.rhPct, dewPointC: air.dewPointC });
      }
      if (event.surfaceTemperatureC !== undefined) {
        data.wood.push({ at: event.at, woodTempC: event.surfaceTemperatureC });
      }
      plot?.setData(columns(data));
    },
  };
}
