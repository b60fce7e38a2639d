// The bar every page wears: shop, units, clock, the invented shop's note, the cut line.

import { byId, say } from './dom.js';
import { chooseFahrenheit, clock, inFahrenheit, nowMs, setShop } from './words.js';

export function Shell(pageName) {
  const cutOff = byId('cut-off');
  const radios = document.querySelectorAll('.units input');
  radios.forEach((radio) => {
    radio.addEventListener('change', () => chooseFahrenheit(radio.value === 'F'));
  });
  let known = false;

  function tick() {
    if (known) say(byId('clock'), clock(nowMs()));
  }
  setInterval(tick, 1000);

  return {
    show(now) {
      setShop(now);
      known = true;
      say(byId('shop'), now.shop);
      document.title = `${pageName} \u00b7 ${now.shop}`;
      byId('invented').hidden = !now.invented;
      radios.forEach((radio) => {
        radio.checked = (radio.value === 'F') === inFahrenheit();
      });
      tick();
    },
    up() {
      cutOff.hidden = true;
    },
    down(since) {
      cutOff.hidden = false;
      say(
        cutOff.querySelector('span'),
        `Not connected since ${clock(since + nowMs() - Date.now())}. What you see is from then; it comes back by itself.`,
      );
    },
  };
}
