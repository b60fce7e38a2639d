// A tile a room: what is measured, how old it is, and where the wood's temperature is from.

import { byId, fill, fromTemplate, make, say } from './dom.js';
import { ageOf, ago, doubtWords, percent, step, temperature, told } from './words.js';

function spreadOf(room, session) {
  const reckoned = session?.outlook.clouding?.spreadAtWoodK;
  const value = reckoned ?? room.spreadAtWoodK;
  if (value === undefined) return 'no reading';
  return value < 0 ? `none: ${step(-value)} below dew point` : `${step(value)} above dew point`;
}

function woodOf(room) {
  if (room.wood) return `${temperature(room.wood.woodTempC)}, ${ago(ageOf(room.wood.at))}`;
  return 'not measured';
}

function fromOf(room, session) {
  const air = room.sources.length > 0 ? `Air by ${room.sources.join(', ')}` : 'No sensor gave air';
  const wood = session?.woodFrom ? `; wood: ${session.woodFrom}` : '';
  const unsure = room.air ? `; \u00b1 ${step(2 * room.air.temperatureErrorK)} and \u00b1 ${percent(2 * room.air.rhErrorPct)}` : '';
  const door = room.outside ? ` ${told(room.outside.sentence)}` : '';
  return `${air}${wood}${unsure}.${door}`;
}

function updateTile(tile, { room, session, chosen }) {
  const head = tile.querySelector('h3');
  const link = head.firstElementChild ?? head.appendChild(make('a'));
  say(link, room.room);
  link.href = `/?room=${encodeURIComponent(room.room)}`;
  if (chosen) link.setAttribute('aria-current', 'true');
  else link.removeAttribute('aria-current');
  const boardKnown = room.wood !== undefined;
  const part = (name) => tile.querySelector(`.${name}`);
  say(part('age'), room.air ? ago(ageOf(room.air.at)) : 'no current reading');
  say(part('air'), room.air ? temperature(room.air.airTempC) : '\u2014');
  say(part('rh'), room.air ? percent(room.air.rhPct) : '\u2014');
  say(part('dew'), room.air ? temperature(room.air.dewPointC) : '\u2014');
  say(part('wood'), woodOf(room));
  say(part('spread'), spreadOf(room, session));
  part('spread').classList.toggle('guess', !boardKnown);
  say(part('from'), fromOf(room, session));
  part('doubt').hidden = room.doubt === undefined;
  say(part('doubt'), room.doubt ? doubtWords(room.doubt) : '');
  const trouble = room.trouble ?? (room.disagree ? 'Two sensors disagree; the worse one is used. Compare them side by side.' : '');
  part('trouble').hidden = trouble === '';
  part('trouble').replaceChildren(make('span', '', trouble));
}

export function Rooms() {
  const list = byId('rooms');
  return {
    update({ rooms, sessions, room: chosen }) {
      fill(
        list,
        rooms.map((room) => ({
          room,
          session: sessions.find((one) => one.room === room.room),
          chosen: room.room === chosen,
        })),
        (item) => item.room.room,
        () => fromTemplate('room-tile'),
        updateTile,
      );
    },
  };
}
