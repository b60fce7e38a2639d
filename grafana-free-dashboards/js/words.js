// How numbers and times are written. The daemon speaks SI; the eye chooses °C or °F here.

const MINUS = '\u2212';
const NARROW = '\u202f';

let fahrenheit = false;
let zone;
let aheadMs = 0; // the shop's clock less this screen's
const listeners = [];

export function setShop({ units, zone: shopZone, at }) {
  zone = shopZone;
  aheadMs = Date.parse(at) - Date.now();
  if (kept() === null) fahrenheit = units === 'us';
}

function kept() {
  try {
    return localStorage.getItem('degrees');
  } catch {
    return null;
  }
}

fahrenheit = kept() === 'F';

export function inFahrenheit() {
  return fahrenheit;
}

export function chooseFahrenheit(wanted) {
  fahrenheit = wanted;
  try {
    localStorage.setItem('degrees', wanted ? 'F' : 'C');
  } catch {
    // A browser that keeps nothing asks again next time.
  }
  listeners.forEach((listener) => listener());
}

export function onUnits(listener) {
  listeners.push(listener);
}

export const nowMs = () => Date.now() + aheadMs;

export function fixed(value, digits = 1) {
  const text = Math.abs(value).toFixed(digits);
  return value < 0 && Number(text) !== 0 ? MINUS + text : text;
}

export const degrees = (celsius) => (fahrenheit ? celsius * 1.8 + 32 : celsius);
export const unit = () => (fahrenheit ? '°F' : '°C');
export const temperature = (celsius) => `${fixed(degrees(celsius))}${NARROW}${unit()}`;
export const stepValue = (kelvin) => fixed(fahrenheit ? kelvin * 1.8 : kelvin);
export const stepUnit = () => (fahrenheit ? '°F' : 'K');
export const step = (kelvin) => `${stepValue(kelvin)}${NARROW}${stepUnit()}`;
export const percent = (value, digits = 0) => `${fixed(value, digits)}${NARROW}%`;

export function duration(minutes) {
  if (minutes < 1.5) return `${fixed(minutes * 60, 0)}${NARROW}s`;
  if (minutes < 10) return `${fixed(minutes, 1)}${NARROW}min`;
  if (minutes < 90) return `${fixed(minutes, 0)}${NARROW}min`;
  if (minutes < 2880) return `${fixed(minutes / 60, minutes < 600 ? 1 : 0)}${NARROW}h`;
  return `${fixed(minutes / 1440, minutes < 14400 ? 1 : 0)}${NARROW}days`;
}

export function ago(seconds) {
  if (seconds < 90) return `${Math.max(0, Math.round(seconds))}${NARROW}s ago`;
  return `${duration(seconds / 60)} ago`;
}

export const ageOf = (time) => (nowMs() - Date.parse(time)) / 1000;

function format(options, time) {
  return new Intl.DateTimeFormat('en-GB', { timeZone: zone, hourCycle: 'h23', ...options }).format(
    typeof time === 'string' ? Date.parse(time) : time,
  );
}

export const clock = (time) => format({ hour: '2-digit', minute: '2-digit' }, time);
const day = (time) => format({ year: 'numeric', month: '2-digit', day: '2-digit' }, time);

// "15:20", "tomorrow 09:10", "Fri 17 Jul 09:10"; far off, the hour no longer matters.
export function when(time) {
  const ms = typeof time === 'string' ? Date.parse(time) : time;
  const apart = ms - nowMs();
  if (day(ms) === day(nowMs())) return clock(ms);
  if (day(ms) === day(nowMs() + 86400000)) return `tomorrow ${clock(ms)}`;
  if (day(ms) === day(nowMs() - 86400000)) return `yesterday ${clock(ms)}`;
  if (Math.abs(apart) < 8 * 86400000) {
    return `${format({ weekday: 'short', day: 'numeric', month: 'short' }, ms)} ${clock(ms)}`;
  }
  return format({ weekday: 'short', day: 'numeric', month: 'short' }, ms);
}

export const shortDay = (time) => format({ weekday: 'short', day: 'numeric', month: 'short' }, time);
export const partName = (path) => path.split('/').join(' \u203a ');
// A whole sentence, with one full stop.
export const sentence = (text) => capital(text) + (/[.!?]$/.test(text) ? '' : '.');

// What a part is once a milestone has passed: "dry hard", "ready to wrap".
export const standing = (milestone) =>
  milestone === 'rub out' || milestone === 'wrap' ? `ready to ${milestone}` : milestone;

// A sentence of the daemon's, which speaks in °C, K and µm, in the units that go with the
// degrees chosen here.
export function told(text) {
  if (!fahrenheit) return text;
  const films = text
    .replace(/(\d+(?:\.\d+)?) µm \((\d+(?:\.\d+)?) mil\)/g, '$2 mil ($1 µm)')
    .replace(/(\d+(?:\.\d+)?) µm(?!\))/g, (_, um) => `${(Number(um) / 25.4).toFixed(1)} mil`);
  const number = '(?<![\\w.])(-?\\d+(?:\\.\\d+)?)';
  const replaced = (from, unitWord, by, finer) =>
    from.replace(new RegExp(`(?:${number}( to | or |–))?${number} ${unitWord}(?!\\w)`, 'g'), (_, first, between, last) => {
      const one = (value) => {
        const digits = (value.split('.')[1] ?? '').length;
        const shown = by(Number(value));
        return finer && digits === 0 ? String(Number(shown.toFixed(1))) : shown.toFixed(digits);
      };
      return `${first === undefined ? '' : one(first) + between}${one(last)} °F`;
    });
  return replaced(replaced(films, '°C', (c) => c * 1.8 + 32, false), 'K', (k) => k * 1.8, true);
}

// A jump that waits for the next reading to agree, or what a sensor in doubt says, in words.
export function doubtWords({ airTempC, rhPct, woodTempC, source, jumped, reason }) {
  const read = [];
  if (airTempC !== undefined) read.push(temperature(airTempC));
  if (rhPct !== undefined) read.push(percent(rhPct));
  if (woodTempC !== undefined) read.push(`wood ${temperature(woodTempC)}`);
  if (!jumped) return `${capital(source)} reads ${read.join(', ')} and is in doubt: ${told(reason)}.`;
  return `Just read ${read.join(', ')} by ${source}: a jump, waiting for one more reading to agree.`;
}

export const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);
