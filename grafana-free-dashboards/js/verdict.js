// The one line and the one number. The daemon judged; this shows.

import { byId, say } from './dom.js';
import { ago, capital, clock, doubtWords, duration, partName, percent, stepUnit, stepValue, temperature, told } from './words.js';

function word({ outlook, verb }) {
  return capital(outlook.summary === 'brush' ? verb : outlook.summary);
}

// The sentence without the word that already stands above it.
function rest({ line, outlook, verb }) {
  for (const start of [outlook.summary, verb]) {
    if (line.toLowerCase().startsWith(`${start}: `)) return capital(line.slice(start.length + 2));
  }
  return line;
}

function split(text) {
  const [value, ...unit] = text.split('\u202f');
  return { value, unit: unit.join(' ') };
}

function against(kelvin, what) {
  return {
    value: stepValue(Math.abs(kelvin)),
    unit: stepUnit(),
    caption: `${what} ${kelvin < 0 ? 'below' : 'above'} the dew point`,
  };
}

// Under 1 K at the wood the wood decides; else the film at its coldest does.
function toDewPoint({ spreadAtWoodK, marginK }) {
  return marginK === undefined || spreadAtWoodK < 1 ? against(spreadAtWoodK, 'wood') : against(marginK, 'film at its coldest');
}

function toRubOut({ rubOutDays, ratioToReference }) {
  const median = rubOutDays?.p50;
  return median === undefined
    ? { value: ratioToReference.toFixed(1), unit: '\u00d7', caption: 'of its usual pace' }
    : { ...split(duration(median * 1440)), caption: 'until it can be rubbed out' };
}

function decided({ value, unit, what }) {
  if (unit === 'min') return { ...split(duration(value)), caption: what };
  return { ...split(unit === 'degC' ? temperature(value) : percent(value, 1)), caption: what };
}

function formed(marginK) {
  return {
    value: stepValue(Math.abs(marginK)),
    unit: stepUnit(),
    caption: `${marginK < 0 ? 'below' : 'above'} what its particles need to flow together`,
  };
}

// The number behind the word, where the record carries one; else the sentence has it.
function number({ outlook, airAgeSeconds }) {
  const { clouding, drying, openTime, cure, decidedBy, deciding } = outlook;
  switch (decidedBy) {
    case 'condensation':
      return clouding ? against(clouding.spreadAtWoodK, 'wood') : null;
    case 'clouding':
      return clouding ? toDewPoint(clouding) : null;
    case 'drying':
      return drying ? toRubOut(drying) : null;
    case 'open-time':
      return openTime ? { ...split(duration(openTime.min)), caption: 'of wet edge' } : null;
    case 'film-forming':
      return cure?.filmFormingMarginK === undefined ? null : formed(cure.filmFormingMarginK);
    case 'recoat-window':
    case 'too-tacky':
    case 'limits':
    case 'weak-spirit':
      return deciding ? decided(deciding) : null;
    default:
      return outlook.summary === "can't tell" && airAgeSeconds !== undefined
        ? { ...split(ago(airAgeSeconds).replace(' ago', '')), caption: 'since the last reading' }
        : null;
  }
}

function spokenOf({ open, part, jar, finishTitle, room }) {
  const what = open && part ? `for ${partName(part)}` : "for the shop's usual finish";
  const from = jar ? `${finishTitle} from jar ${jar}` : finishTitle;
  return `The air in the ${room} ${what}: ${from}.`;
}

export function Verdict() {
  const el = byId('verdict');
  let spoken = '';

  return {
    update(session, room, old) {
      el.dataset.summary = session.outlook.summary;
      el.toggleAttribute('data-old', old);
      say(byId('word'), word(session));
      say(byId('verdict-line'), rest(session));
      say(byId('reason'), told(session.outlook.reason));
      const share = session.nextBetterShare === undefined ? '' : `, fine in ${Math.round(100 * session.nextBetterShare)} of 100 courses the air may take`;
      const better = session.nextBetter ? ` A better hour is expected from about ${clock(session.nextBetter)}${share}.` : '';
      say(byId('of'), spokenOf(session) + better);

      byId('doubt').hidden = room?.doubt === undefined;
      say(byId('doubt'), room?.doubt ? `${doubtWords(room.doubt)} The word above rests on ${room.doubt.jumped ? 'the reading before' : 'the other sensors'}.` : '');

      const shown = number(session);
      byId('number').hidden = shown === null;
      if (shown) {
        say(byId('number-value'), shown.value);
        say(byId('number-unit'), shown.unit);
        say(byId('number-caption'), shown.caption);
      }

      const announced = `${word(session)}. ${rest(session)}.`;
      if (announced !== spoken) {
        spoken = announced;
        say(byId('spoken'), `${announced} ${told(session.outlook.reason)}`);
      }
    },
  };
}
