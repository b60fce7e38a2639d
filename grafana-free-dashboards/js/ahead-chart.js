// Five days on one sheet: measured, forecast with its band, and, in grey, what is usual.

import uPlot from '/lib/uplot/uPlot.esm.js';
import { byId, say } from './dom.js';
import { colour, drawn, hatch, label, sheet } from './paper.js';
import { clock, degrees, nowMs, shortDay, temperature, when } from './words.js';

const LONGEST_STEP_S = 2400;
const COLUMNS = 15;
const seconds = (time) => Date.parse(time) / 1000;

// Columns: air, dew, wood measured; air, dew forecast; air, dew usual; then the bands, high and low.
function columns({ readings, forecast }) {
  const rows = new Map();
  const put = (at, column, value) => {
    const row = rows.get(at) ?? Array(COLUMNS).fill(undefined);
    row[column] = value;
    rows.set(at, row);
  };
  const line = (items, column, valueOf, longest = Infinity) => {
    items.forEach((item, index) => {
      const at = seconds(item.at);
      put(at, column, degrees(valueOf(item)));
      const next = items[index + 1];
      if (next && seconds(next.at) - at > longest) put(at + 1, column, null);
    });
  };
  line(readings.points, 0, (point) => point.airTempC, LONGEST_STEP_S);
  line(readings.points, 1, (point) => point.dewPointC, LONGEST_STEP_S);
  line(readings.wood, 2, (point) => point.woodTempC, LONGEST_STEP_S);
  const ahead = forecast.hours.filter((hour) => !hour.usual);
  const usual = [...ahead.slice(-1), ...forecast.hours.filter((hour) => hour.usual)];
  [ahead, usual].forEach((hours, grey) => {
    line(hours, 3 + 2 * grey, (hour) => hour.airTempC);
    line(hours, 4 + 2 * grey, (hour) => hour.dewPointC);
    line(hours, 7 + 4 * grey, (hour) => hour.airTempP90C);
    line(hours, 8 + 4 * grey, (hour) => hour.airTempP10C);
    line(hours, 9 + 4 * grey, (hour) => hour.dewPointP90C);
    line(hours, 10 + 4 * grey, (hour) => hour.dewPointP10C);
  });
  const times = [...rows.keys()].sort((a, b) => a - b);
  return [times, ...Array.from({ length: COLUMNS }, (_, column) => times.map((at) => rows.get(at)[column]))];
}

function span(items, low, high = low) {
  return `${temperature(Math.min(...items.map(low)))} to ${temperature(Math.max(...items.map(high)))}`;
}

function describe({ room, readings, forecast }) {
  const was =
    readings.points.length === 0
      ? `No readings of the ${room} in the last 48 hours.`
      : `${room}, last 48 hours: air ${span(readings.points, (p) => p.airTempC)}, dew point ${span(readings.points, (p) => p.dewPointC)}.`;
  const missing = readings.gaps.length === 0 ? '' : ` No readings ${readings.gaps.map((gap) => `from ${when(gap.from)} to ${when(gap.to)}`).join(', ')}; nothing is drawn there.`;
  const day = forecast.hours.filter((hour) => !hour.usual);
  const next =
    day.length === 0
      ? ''
      : ` Next 24 hours, eight in ten: air ${span(day, (h) => h.airTempP10C, (h) => h.airTempP90C)}, dew point ${span(day, (h) => h.dewPointP10C, (h) => h.dewPointP90C)}.`;
  return `${was}${missing}${next} ${forecast.sentence}`;
}

export function AheadChart() {
  const box = byId('chart');
  let data = null;
  let plot = null;

  function background(u) {
    const { ctx: context, bbox } = u;
    const end = bbox.left + bbox.width;
    const at = (time) => Math.min(end, Math.max(bbox.left, u.valToPos(time, 'x', true)));
    for (const gap of data.readings.gaps) {
      const left = at(seconds(gap.from));
      if (at(seconds(gap.to)) > left) hatch(context, left, at(seconds(gap.to)) - left, bbox.top, bbox.height);
    }
    const now = at(nowMs() / 1000);
    const usual = data.forecast.usualFrom ? at(seconds(data.forecast.usualFrom)) : end;
    context.fillStyle = colour('--sunk');
    context.fillRect(usual, bbox.top, end - usual, bbox.height);
    context.fillStyle = colour('--ink');
    context.fillRect(now - 1, bbox.top, 2, bbox.height);
    const dots = devicePixelRatio;
    label(u, 'now', now - 6 * dots, 'right');
    if (usual - now > 90 * dots) label(u, 'forecast', now + 6 * dots, 'left');
    if (end - usual > 190 * dots) label(u, 'usual for this hour, no forecast', usual + 6 * dots, 'left');
    else if (end - usual > 50 * dots) label(u, 'usual', usual + 6 * dots, 'left');
  }

  // The bands are pale; their edges carry no line of their own.
  const edge = { width: 0, points: { show: false } };
  const band = (series, ink) => ({ series, fill: `${colour(ink)}33` });

  function options() {
    const paper = sheet(
      box,
      [
        drawn('air', '--air', { width: 3.5 }),
        drawn('dew point', '--dew', { width: 2 }),
        drawn('wood', '--wood', { width: 4, dash: [1, 7], cap: 'round' }),
        drawn('air, forecast', '--air', { width: 2.5, dash: [7, 6] }),
        drawn('dew point, forecast', '--dew', { width: 2, dash: [7, 6] }),
        drawn('air, usual', '--muted', { width: 2.5, dash: [7, 6] }),
        drawn('dew point, usual', '--muted', { width: 2, dash: [2, 5] }),
        ...Array(8).fill(edge),
      ],
      background,
    );
    paper.bands = [band([8, 9], '--air'), band([10, 11], '--dew'), band([12, 13], '--muted'), band([14, 15], '--muted')];
    paper.axes[0].space = 54;
    paper.axes[0].incrs = [3, 6, 12, 24, 48].map((hours) => hours * 3600);
    paper.axes[0].values = (u, splits) => splits.map((time) => (clock(time * 1000) === '00:00' ? shortDay(time * 1000).replace(/ \w+$/, '') : clock(time * 1000)));
    return paper;
  }

  function draw() {
    if (data === null) return;
    plot?.destroy();
    plot = new uPlot(options(), columns(data), box);
    say(byId('chart-words'), describe(data));
    box.setAttribute('aria-label', `Air, wood and dew point in the ${data.room}, two days back and three ahead`);
  }

  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', draw);
  new ResizeObserver(() => plot?.setSize({ width: box.clientWidth, height: box.clientHeight })).observe(box);

  return {
    show(newest) {
      data = newest;
      draw();
    },
  };
}
