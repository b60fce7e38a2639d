// A time axis that gives the next hours as much room as the next weeks: even steps are multiples.

const TICKS = [
  [0, 'now'],
  [1, '1 h'],
  [4, '4 h'],
  [12, '12 h'],
  [24, '1 day'],
  [72, '3 days'],
  [168, '1 week'],
  [336, '2 weeks'],
  [720, '1 month'],
  [1440, '2 months'],
  [4320, '6 months'],
];

export function Axis(nowMs, latestMs) {
  const hours = (ms) => Math.max(0, (ms - nowMs) / 3600000);
  const end = Math.max(24, hours(latestMs) * 1.08);
  const share = (h) => (100 * Math.log1p(h)) / Math.log1p(end);

  return {
    // Per cent of the width; what lies behind us stands at the left edge.
    at: (ms) => Math.min(100, share(hours(ms))),
    ticks(leastApart) {
      let last = -Infinity;
      return TICKS.filter(([h]) => {
        const wide = share(h) <= 94 && share(h) - last >= leastApart;
        if (wide) last = share(h);
        return wide;
      }).map(([h, label]) => ({ at: share(h), label }));
    },
  };
}
