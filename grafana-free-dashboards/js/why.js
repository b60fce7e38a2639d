// Why: one sentence, then the evidence, then the minutes.

import uPlot from '/lib/uplot/uPlot.esm.js';
import { get } from './api.js';
import { byId, make, say, sentences } from './dom.js';
import { listen } from './live.js';
import { colour, drawn, hatch, label, sheet } from './paper.js';
import { Shell } from './shell.js';
import { clock, degrees, duration, onUnits, partName, percent, sentence, step, temperature, told, when } from './words.js';

const BLAME = {
  yes: 'The air was the cause.',
  partly: 'The air was part of the cause.',
  no: 'The air was not the cause.',
  "can't tell": "Whether the air was the cause can't be told.",
};
const seconds = (time) => Date.parse(time) / 1000;

const shell = Shell('Why');
const asked = new URLSearchParams(location.search).get('coat');
let why = null;
let coat = null;
let plot = null;

function ratio({ waterPeakPct, waterLimitPct }) {
  const s = waterPeakPct / waterLimitPct;
  return s > 2 ? 'over 2' : s.toFixed(2);
}

function facts(pairs) {
  byId('facts').replaceChildren(
    ...pairs.flatMap(([name, text, guess]) => {
      const value = make('dd');
      value.append(make('span', guess ? 'guess' : '', text));
      return [make('dt', '', name), value];
    }),
  );
}

// Only a film of spirit takes water in.
function water(model) {
  if (model.waterPeakPct === undefined) return [];
  return [
    ['Water in the film', `${ratio(model)} of what the resin bears (${percent(model.waterPeakPct, 1)} of ${percent(model.waterLimitPct, 1)})`, true],
    ['Water came out for', duration(model.bloomSeconds / 60), true],
  ];
}

function evidence() {
  const { model } = why;
  byId('evidence').hidden = !model;
  if (!model) return;
  facts([
    ['Wood over dew point', step(model.spreadAtWoodK), false],
    ['Dew point', temperature(model.dewPointC), false],
    ['Coldest film', temperature(model.filmLowC), true],
    ...water(model),
    ['Clouding', model.level, true],
  ]);
  say(byId('model'), `Reckoned by ${model.name} ${model.version}.`);
}

function counterfactuals() {
  byId('change').hidden = why.counterfactuals.length === 0;
  const wet = why.counterfactuals.some((one) => one.waterPeakPct !== undefined);
  byId('water').hidden = !wet;
  byId('counterfactuals').replaceChildren(
    ...why.counterfactuals.map((one) => {
      const row = make('tr');
      const head = make('th', '', told(one.change));
      head.scope = 'row';
      row.append(head, ...[told(one.was), told(one.would), one.helps ? one.level : `${one.level}, no help`, ...(wet ? [ratio(one)] : [])].map((cell) => make('td', '', cell)));
      return row;
    }),
  );
}

function background(u) {
  const { ctx: context, bbox } = u;
  for (const gap of why.gaps) {
    const left = Math.max(u.valToPos(seconds(gap.from), 'x', true), bbox.left);
    const right = Math.min(u.valToPos(seconds(gap.to), 'x', true), bbox.left + bbox.width);
    if (right > left) hatch(context, left, right - left, bbox.top, bbox.height);
  }
  const at = coat ? u.valToPos(seconds(coat.start), 'x', true) : -1;
  if (at > bbox.left && at < bbox.left + bbox.width) {
    context.fillStyle = colour('--ink');
    context.fillRect(at - 1, bbox.top, 2, bbox.height);
    label(u, 'coat laid', at + 6 * devicePixelRatio, 'left');
  }
}

function minutes() {
  const times = [];
  const columns = [[], [], []];
  const put = (at, values) => {
    times.push(at);
    values.forEach((value, index) => columns[index].push(value));
  };
  why.air.forEach((point, index) => {
    put(seconds(point.at), [
      degrees(point.airTempC),
      degrees(point.dewPointC),
      point.woodTempC === undefined ? null : degrees(point.woodTempC),
    ]);
    const next = why.air[index + 1];
    if (next && seconds(next.at) - seconds(point.at) > 600) put(seconds(point.at) + 1, [null, null, null]);
  });
  return [times, ...columns];
}

function air() {
  byId('air').hidden = why.air.length === 0;
  if (why.air.length === 0) return;
  const box = byId('chart');
  plot?.destroy();
  plot = new uPlot(
    sheet(
      box,
      [
        drawn('air', '--air', { width: 3.5 }),
        drawn('dew point', '--dew', { width: 2 }),
        drawn('wood', '--wood', { width: 4, dash: [1, 7], cap: 'round' }),
      ],
      background,
    ),
    minutes(),
    box,
  );
  byId('minutes').replaceChildren(
    ...why.air.map((point) => {
      const row = make('tr');
      const head = make('th', '', clock(point.at));
      head.scope = 'row';
      const wood = point.woodTempC === undefined ? '\u2014' : temperature(point.woodTempC);
      const cells = [temperature(point.airTempC), percent(point.rhPct), temperature(point.dewPointC), wood];
      row.append(head, ...cells.map((cell) => make('td', '', cell)));
      return row;
    }),
  );
}

function update() {
  if (why === null) return;
  say(byId('sentence'), sentence(told(why.sentence)));
  byId('coat').value = why.coat;
  const hardly = why.airAtFault === 'no' && why.model && why.model.level !== 'none expected';
  say(byId('blame'), hardly ? 'The air was hardly the cause.' : BLAME[why.airAtFault]);
  const laid = coat ? `, laid ${when(coat.start)} from jar ${coat.jar}` : '';
  say(byId('of'), `${partName(why.part)}, coat ${why.coat}${laid}.`);
  evidence();
  counterfactuals();
  const notes = [...why.jar, ...why.cautions].map(told);
  byId('other').hidden = notes.length === 0;
  sentences(byId('notes'), notes);
  air();
}

// The coats to ask of: those with something seen on them lead.
async function choices() {
  const { pieces } = await get('pieces');
  const parts = pieces.flatMap((piece) => piece.parts).filter((part) => part.coats > 0);
  const sheets = await Promise.all(parts.map((part) => get(`parts/${part.part.split('/').map(encodeURIComponent).join('/')}`)));
  const coats = sheets
    .flatMap((one) => one.coats.map((laid, index) => ({ ...laid, number: index + 1 })))
    .sort((a, b) => Date.parse(b.start) - Date.parse(a.start));
  byId('coat').replaceChildren(
    ...coats.map((laid) => {
      const option = make('option', '', `${partName(laid.part)}, coat ${laid.number}, ${when(laid.start)}`);
      option.value = laid.coat;
      option.selected = laid.coat === asked;
      return option;
    }),
  );
  byId('ask').hidden = coats.length === 0;
}

async function ask() {
  try {
    shell.show(await get('now'));
    await choices();
    if (asked === null) return;
    why = await get(`why/${asked.split('/').map(encodeURIComponent).join('/')}`);
    coat = await get(`coats/${encodeURIComponent(why.coat)}`).catch(() => null);
    update();
  } catch (error) {
    say(byId('sentence'), error.status ? error.message : 'The daemon does not answer; load the page again.');
  }
}

listen([], { onEvent() {}, onUp: shell.up, onDown: shell.down });
onUnits(update);
matchMedia('(prefers-color-scheme: dark)').addEventListener('change', update);
new ResizeObserver(() => plot?.setSize({ width: byId('chart').clientWidth, height: byId('chart').clientHeight })).observe(byId('chart'));
ask();
