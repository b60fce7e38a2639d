// The stream of events. It comes back by itself; while it is down the page says since when.

const CHECK_MS = 15000;
const AGAIN_MS = 3000;

export function listen(names, { onEvent, onUp, onDown }) {
  let source;
  let downSince = null;

  function down() {
    if (downSince === null) downSince = Date.now();
    onDown(downSince);
  }

  function open() {
    source?.close();
    source = new EventSource('/api/v1/events');
    source.addEventListener('open', () => {
      downSince = null;
      onUp();
    });
    source.addEventListener('error', () => {
      down();
      if (source.readyState === EventSource.CLOSED) setTimeout(open, AGAIN_MS);
    });
    for (const name of names) {
      source.addEventListener(name, (event) => onEvent(name, JSON.parse(event.data)));
    }
  }

  // A line that died without a word (a router pulled, a laptop asleep) is found by asking.
  setInterval(async () => {
    try {
      await fetch('/health', { signal: AbortSignal.timeout(8000) });
      if (downSince !== null && source.readyState !== EventSource.CONNECTING) open();
    } catch {
      down();
    }
  }, CHECK_MS);

  open();
  addEventListener('pagehide', () => source.close());
  addEventListener('pageshow', (event) => {
    if (event.persisted) open();
  });
}
