// One big press writes a coat; it is read back by shape and words, and can be undone.

import { freshKey, post } from './api.js';
import { byId, fill, make, say } from './dom.js';
import { clock, partName } from './words.js';

const READ_BACK_MS = 12000;

export function CoatOn({ onWritten }) {
  const button = byId('coat-on');
  const trouble = byId('coat-trouble');
  let press = null;
  let key = null;
  let kept = recall();

  function recall() {
    try {
      return JSON.parse(sessionStorage.getItem('coats') ?? '[]');
    } catch {
      return [];
    }
  }

  function keep(coats) {
    kept = coats.slice(-4);
    try {
      sessionStorage.setItem('coats', JSON.stringify(kept));
    } catch {
      // Without storage, undo lasts as long as the page.
    }
    showKept();
  }

  function state(name, what, which) {
    button.dataset.state = name;
    say(byId('coat-what'), what);
    say(byId('coat-which'), which);
  }

  function ready() {
    if (press === null) return;
    state(
      'ready',
      `Coat on: ${partName(press.part)}`,
      `coat ${press.coat}, ${press.method}, jar ${press.jar}; one press writes it down`,
    );
  }

  function fail(message) {
    trouble.replaceChildren(make('span', '', message));
    trouble.hidden = false;
  }

  function showKept() {
    fill(
      byId('written'),
      [...kept].reverse(),
      (coat) => coat.coat,
      () => {
        const undo = make('button', 'undo', 'Undo');
        undo.type = 'button';
        const li = make('li');
        li.append(make('span'), undo);
        return li;
      },
      (li, coat) => {
        say(li.firstElementChild, `${partName(coat.part)}, coat ${coat.number}, written ${clock(coat.at)}`);
        li.lastElementChild.onclick = () => strike(coat);
        li.lastElementChild.setAttribute('aria-label', `Undo coat ${coat.number} on ${partName(coat.part)}`);
      },
    );
  }

  async function strike(coat) {
    trouble.hidden = true;
    try {
      await post('strikes', { entry: coat.coat, reason: 'undone at the bench' }, `undo-${coat.coat}`);
      keep(kept.filter((one) => one.coat !== coat.coat));
      ready();
      onWritten();
    } catch (error) {
      fail(`Not undone. ${error.message}`);
    }
  }

  button.addEventListener('click', async () => {
    if (press === null || button.dataset.state === 'sending' || button.dataset.state === 'written') return;
    trouble.hidden = true;
    key ??= freshKey(); // a press repeated over a bad line is the same coat
    const sent = press;
    state('sending', 'Writing it down', partName(sent.part));
    try {
      const written = await post('coats', sent.form, key);
      key = null;
      state('written', `Coat ${sent.coat} written, ${clock(written.at)}`, `${partName(sent.part)}, jar ${sent.jar}`);
      keep([...kept, { coat: written.coat, part: sent.part, number: sent.coat, at: written.at }]);
      onWritten();
      setTimeout(ready, READ_BACK_MS);
    } catch (error) {
      if (error.status) key = null; // answered and refused: the next press is a new one
      state('failed', 'Not written: press again', partName(sent.part));
      fail(error.message);
    }
  });

  showKept();

  return {
    update(offered) {
      byId('press').hidden = !offered && kept.length === 0;
      button.hidden = !offered;
      press = offered ?? null;
      if (button.dataset.state === 'ready') ready();
    },
  };
}
