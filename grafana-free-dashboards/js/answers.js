// Three answers, never one green light: clouding, drying, open time.

import { byId, make, say, sentences } from './dom.js';
import { duration, percent, step, temperature, told } from './words.js';

const CLOUDING = ['none expected', 'possible', 'likely'];
const DRYING = ['stalled', 'slow', 'usual', 'brisk'];
const OPEN = ['short', 'comfortable', 'long'];

function level(el, words, word) {
  const steps = make('span', 'steps');
  steps.setAttribute('aria-hidden', 'true');
  words.forEach((_, index) => steps.append(make('i', index <= words.indexOf(word) ? 'on' : '')));
  el.querySelector('.level').replaceChildren(steps, make('span', '', word));
}

function facts(el, pairs) {
  const list = make('dl', 'facts');
  for (const [name, text, guess] of pairs) {
    const value = make('dd');
    value.append(make('span', guess ? 'guess' : '', text));
    list.append(make('dt', '', name), value);
  }
  el.append(list);
}

function reset(id) {
  const el = byId(id);
  while (el.children.length > 2) el.lastElementChild.remove();
  return el;
}

function unknown(el) {
  el.querySelector('.level').replaceChildren(make('span', '', "can't tell"));
}

function meter(ratio) {
  const box = make('div', 'meter');
  box.setAttribute('aria-hidden', 'true');
  const fill = make('span', 'fill');
  fill.style.width = `${Math.min(100, ratio * 50)}%`;
  const limit = make('span', 'limit');
  limit.style.left = '50%';
  box.append(fill, limit);
  return box;
}

function clouding(c) {
  const el = reset('clouding');
  if (!c) return unknown(el);
  level(el, CLOUDING, c.level);
  if (c.waterPeakPct !== undefined && c.waterLimitPct !== undefined) {
    const ratio = c.waterPeakPct / c.waterLimitPct;
    el.append(meter(ratio));
    const times = ratio > 2 ? 'over 2' : ratio.toFixed(2);
    el.append(
      make(
        'p',
        '',
        `Water in the film at its worst is ${times} of what the resin bears ` +
          `(${percent(c.waterPeakPct, 1)} of ${percent(c.waterLimitPct, 1)}); the line marks 1.`,
      ),
    );
  }
  const pairs = [['Wood over dew point', step(c.spreadAtWoodK), false]];
  if (c.filmLowC !== undefined) pairs.push(['Coldest film', temperature(c.filmLowC), true]);
  if (c.marginK !== undefined) pairs.push(['Film over dew point', step(c.marginK), true]);
  if (c.clears !== undefined && c.level !== 'none expected') {
    const by = c.clearsAfterMin === undefined ? 'within the hour' : `in about ${duration(c.clearsAfterMin)}`;
    pairs.push(['If it clouds', c.clears ? `should clear by itself ${by}` : 'may stay', true]);
  }
  facts(el, pairs);
}

function about(minutes) {
  return minutes === undefined ? 'not within the time looked at' : `about ${duration(minutes)}`;
}

function drying(d) {
  const el = reset('drying');
  if (!d) return unknown(el);
  level(el, DRYING, d.level);
  el.append(make('p', '', `${d.ratioToReference.toFixed(2)} of its usual pace.`));
  const pairs = [
    ['Dry to touch', about(d.dryToTouchMin), true],
    ['Next coat from', about(d.recoatFromMin), true],
  ];
  pairs.push(['Next coat until', d.recoatUntilMin === undefined ? 'no late end' : about(d.recoatUntilMin), d.recoatUntilMin !== undefined]);
  pairs.push(['Dry hard', about(d.dryHardH === undefined ? undefined : d.dryHardH * 60), true]);
  const rub = d.rubOutDays;
  if (rub?.p50 === undefined) {
    pairs.push(['Rub out', 'will not get there in this air', true]);
  } else {
    const late = rub.p90 === undefined ? 'no end in sight for the slowest' : `nine in ten by ${duration(rub.p90 * 1440)}`;
    pairs.push(['Rub out', `about ${duration(rub.p50 * 1440)}, ${late}`, true]);
  }
  facts(el, pairs);
}

// A finish that cures has no wet edge to reckon; what there is to know while it is wet stands here.
function whileWet(el, cure) {
  el.querySelector('.level').replaceChildren(make('span', '', cure.slowCure.length === 0 ? 'nothing in the way' : 'slow cure'));
  cure.slowCure.forEach((reason) => el.append(make('p', '', told(reason))));
  const pairs = [];
  if (cure.potLifeH !== undefined) pairs.push(['Mixed pot workable', about(cure.potLifeH * 60), true]);
  if (cure.filmFormingMarginK !== undefined) {
    const side = cure.filmFormingMarginK < 0 ? 'below' : 'above';
    pairs.push(['Wet film', `${step(Math.abs(cure.filmFormingMarginK))} ${side} its lowest film-forming temperature`, true]);
  }
  if (cure.wipeOffAfterMin !== undefined) pairs.push(['Wipe off after', duration(cure.wipeOffAfterMin), false]);
  if (cure.bleedEveryMin !== undefined) pairs.push(['Then while it weeps', `every ${duration(cure.bleedEveryMin)}`, false]);
  facts(el, pairs);
}

function openTime(o, cure) {
  const el = reset('open-time');
  el.querySelector('h3').textContent = cure ? 'While it is wet' : 'Open time';
  if (cure) return whileWet(el, cure);
  if (!o) return unknown(el);
  level(el, OPEN, o.level);
  el.append(make('p', '', 'How long the wet edge can still be joined.'));
  facts(el, [
    ['Likely', about(o.min), true],
    ['Nine in ten', `${duration(o.p10Min)} or longer`, true],
  ]);
}

export function Answers() {
  return {
    update({ outlook }) {
      clouding(outlook.clouding);
      drying(outlook.drying);
      openTime(outlook.openTime, outlook.cure);

      byId('help').hidden = outlook.actions.length === 0;
      sentences(byId('actions'), outlook.actions.map(told));
      byId('taken-panel').hidden = outlook.assumptions.length === 0;
      sentences(byId('assumptions'), outlook.assumptions.map(told));
      say(byId('model'), `Reckoned by ${outlook.model.name} ${outlook.model.version}.`);
      byId('caution-panel').hidden = outlook.cautions.length === 0;
      sentences(byId('cautions'), outlook.cautions);
    },
  };
}
