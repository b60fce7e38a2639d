// Now: events come down, the whole page follows; nothing here judges.

import { Answers } from './answers.js';
import { get, oneAtATime } from './api.js';
import { Chart } from './chart.js';
import { CoatOn } from './coat-on.js';
import { byId, say } from './dom.js';
import { Lists } from './lists.js';
import { listen } from './live.js';
import { Rooms } from './rooms.js';
import { Shell } from './shell.js';
import { Verdict } from './verdict.js';
import { onUnits } from './words.js';

const AFRESH_MS = 60000;
const AGES_MS = 5000;

const asked = new URLSearchParams(location.search).get('room');
const shell = Shell('Now');
const verdict = Verdict();
const answers = Answers();
const rooms = Rooms();
const lists = Lists();
const chart = Chart();
const coatOn = CoatOn({ onWritten: () => afresh() });

let now = null;
let old = false;

function update() {
  if (now === null) return;
  shell.show(now);
  document.body.toggleAttribute('data-wet', now.wetFilm);
  const session = now.sessions.find((one) => one.room === now.room);
  if (session) {
    verdict.update(session, now.rooms.find((one) => one.room === now.room), old);
    answers.update(session);
  }
  coatOn.update(now.coatOn.find((one) => one.room === now.room));
  rooms.update(now);
  lists.update(now);
  chart.show(now.room);
}

// However many events ask for it, one question is under way and at most one waits.
const afresh = oneAtATime(async () => {
  try {
    now = await get(asked ? `now?room=${encodeURIComponent(asked)}` : 'now');
    old = false;
    update();
  } catch (error) {
    if (now === null) {
      say(byId('verdict-line'), error.status ? error.message : 'The daemon does not answer; this page asks again by itself.');
    }
  }
});

function replace(list, item, same) {
  const index = list.findIndex(same);
  if (index < 0) list.push(item);
  else list[index] = item;
}

const hear = {
  reading(event) {
    if (event.air) replace(now.rooms, event.air, (room) => room.room === event.air.room);
    const source = now.sources.find((one) => one.source === event.source);
    if (source && !event.doubt) source.lastReadingAt = event.at;
    chart.add(event);
    update();
  },
  outlook(event) {
    replace(now.sessions, event, (session) => session.room === event.room);
    update();
  },
  warning(event) {
    now.warnings = now.warnings.filter((one) => one.id !== event.id);
    if (!event.to) now.warnings.unshift(event);
    update();
  },
  milestone: () => afresh(),
  entry: () => afresh(),
};

listen(Object.keys(hear), {
  onEvent: (name, data) => now !== null && hear[name](data),
  onUp() {
    shell.up();
    afresh();
  },
  onDown(since) {
    shell.down(since);
    old = true;
    update();
  },
});
onUnits(update);
afresh();
setInterval(afresh, AFRESH_MS);
setInterval(() => now !== null && rooms.update(now), AGES_MS);
