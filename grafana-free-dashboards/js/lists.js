// What asks to be done, what is being warned of, the parts at the bench, the sensors.

import { byId, fill, fromTemplate, make, say } from './dom.js';
import { ageOf, ago, capital, partName, sentence, standing, told, when } from './words.js';

function nextWords({ passed, next }) {
  const lines = [];
  if (passed) lines.push({ text: `${capital(standing(passed.milestone))} since about ${when(passed.p50)}`, guess: true });
  if (!next) return lines;
  if (next.reached === false || !next.p50) {
    const why = next.reason ? ` (${told(next.reason)})` : '';
    lines.push({ text: `Will not get to ${next.milestone} in this air${why}`, guess: true });
  } else {
    const late = next.p90 ? `, nine in ten by ${when(next.p90)}` : '';
    lines.push({ text: `${capital(next.milestone)} likely ${when(next.p50)}${late}`, guess: true });
  }
  return lines;
}

function updatePart(li, part) {
  const head = make('p', 'part-name', `${partName(part.part)} \u00b7 ${part.coats} ${part.coats === 1 ? 'coat' : 'coats'}`);
  const lines = nextWords(part).map(({ text, guess }) => {
    const p = make('p');
    p.append(make('span', guess ? 'guess' : '', text));
    return p;
  });
  li.replaceChildren(head, ...lines);
}

function updateWarning(li, warning) {
  say(li.querySelector('.message'), told(warning.message));
  say(li.querySelector('.since'), `since ${when(warning.from)}`);
}

function updateTodo(li, { part, milestone, test }) {
  li.replaceChildren(
    make('p', 'part-name', partName(part)),
    make('p', '', `${capital(standing(milestone))} by now, as reckoned. ${sentence(test)}`),
  );
}

function updateSource(li, source) {
  li.dataset.state = source.state;
  say(li.querySelector('.part-name'), source.source);
  say(li.querySelector('.state'), source.state);
  const last = source.lastReadingAt ? `last reading ${ago(ageOf(source.lastReadingAt))}` : 'no reading yet';
  const where = source.room ? `${source.room}, ${source.transport}` : source.transport;
  say(li.querySelector('.more'), `${where} \u00b7 ${last}${source.trouble ? ` \u00b7 ${told(source.trouble)}` : ''}`);
}

export function Lists() {
  return {
    update(now) {
      fill(byId('warnings'), now.warnings, (one) => one.id, () => fromTemplate('warning-row'), updateWarning);
      fill(byId('todo'), now.todo, (one) => one.part, () => make('li'), updateTodo);
      const idle = now.warnings.length === 0 && now.todo.length === 0;
      byId('nothing').hidden = !idle;
      byId('warnings').hidden = now.warnings.length === 0;
      byId('todo').hidden = now.todo.length === 0;
      const coming = now.parts
        .filter((part) => part.next?.p50)
        .sort((a, b) => Date.parse(a.next.p50) - Date.parse(b.next.p50))[0];
      say(
        byId('next-up'),
        idle && coming ? `Next: ${partName(coming.part)}, ${coming.next.milestone}, likely ${when(coming.next.p50)}.` : '',
      );
      byId('parts-panel').hidden = now.parts.length === 0;
      fill(byId('parts'), now.parts, (part) => part.part, () => make('li'), updatePart);
      byId('sources-panel').hidden = now.sources.length === 0;
      fill(byId('sources'), now.sources, (one) => one.source, () => fromTemplate('source-row'), updateSource);
    },
  };
}
