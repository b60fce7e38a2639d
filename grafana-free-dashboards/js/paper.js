// The paper a chart is drawn on: colours from the page, axes in the shop's units and time.

import { clock, unit } from './words.js';

const FACE = 'system-ui, "DejaVu Sans", sans-serif';

export const colour = (name) => getComputedStyle(document.documentElement).getPropertyValue(name).trim();

export const drawn = (name, ink, extra) => ({
  label: name,
  stroke: colour(ink),
  width: 2,
  points: { show: false },
  ...extra,
});

export function hatch(context, left, width, top, height) {
  context.save();
  context.beginPath();
  context.rect(left, top, width, height);
  context.clip();
  context.strokeStyle = colour('--hatch');
  context.lineWidth = 2;
  for (let x = left - height; x < left + width; x += 12) {
    context.beginPath();
    context.moveTo(x, top + height);
    context.lineTo(x + height, top);
    context.stroke();
  }
  context.restore();
}

export function label({ ctx: context, bbox }, text, x, align) {
  context.fillStyle = colour('--muted');
  context.font = `${13 * devicePixelRatio}px ${FACE}`;
  context.textAlign = align;
  context.textBaseline = 'top';
  context.fillText(text, x, bbox.top + 4 * devicePixelRatio);
}

export function sheet(box, series, background) {
  const axis = {
    stroke: colour('--muted'),
    font: `14px ${FACE}`,
    grid: { stroke: colour('--line'), width: 1 },
    ticks: { stroke: colour('--line'), width: 1 },
  };
  return {
    width: box.clientWidth,
    height: box.clientHeight,
    legend: { show: false },
    cursor: { show: false },
    scales: { x: { time: true } },
    axes: [
      { ...axis, space: 64, values: (u, splits) => splits.map((at) => clock(at * 1000)) },
      { ...axis, size: 66, incrs: [1, 2, 5, 10, 20], values: (u, splits) => splits.map((value) => `${value}\u00a0${unit()}`) },
    ],
    series: [{}, ...series],
    hooks: { drawClear: [background] },
  };
}
