// Asks the daemon. A refusal becomes an error whose message a person can act on.

export class Refused extends Error {
  constructor(problem, status) {
    const faults = problem.faults ?? [];
    super(
      faults.length > 0
        ? faults.map((fault) => `${fault.input}: ${fault.rule}; ${fault.remedy}.`).join(' ')
        : (problem.detail ?? `refused (${status})`),
    );
    this.status = status;
  }
}

async function answer(response) {
  const body = await response.json();
  if (!response.ok) throw new Refused(body, response.status);
  return body;
}

export async function get(path) {
  return answer(await fetch(`/api/v1/${path}`, { headers: { Accept: 'application/json' } }));
}

export async function post(path, form, key) {
  return answer(
    await fetch(`/api/v1/${path}`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', 'Idempotency-Key': key },
      body: JSON.stringify(form),
    }),
  );
}

// Runs now, or once more after the run under way; many calls meanwhile are one.
export function oneAtATime(ask) {
  let running = false;
  let again = false;
  return async function run() {
    again = running;
    if (running) return;
    running = true;
    try {
      await ask();
    } finally {
      running = false;
    }
    if (again) await run();
  };
}

// crypto.randomUUID is missing where the page is not on a loopback name; random bytes never are.
export function freshKey() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
