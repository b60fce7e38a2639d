// The peer's side of AirBench: psychrolib under node over the same states, warm, the quickest of many
// passes. Prints one line a function (name, nanoseconds a state); with a file name, writes what it
// found there, one state a line: air °C, RH %, dew point °C, wet bulb °C, kg/kg, kJ/kg.
//
// usage: node grid.js SECONDS [FILE]        with psychrolib where node finds it (NODE_PATH)
'use strict';

const fs = require('fs');
const psychrolib = require('psychrolib');

psychrolib.SetUnitSystem(psychrolib.SI);
const PRESSURE_PA = 101325;

const states = [];
for (let t = 15; t <= 40; t++) {
  for (let rh = 40; rh <= 95; rh++) {
    states.push([t, rh]);
  }
}

const functions = {
  dewPoint: (t, rh) => psychrolib.GetTDewPointFromRelHum(t, rh / 100),
  wetBulb: (t, rh) => psychrolib.GetTWetBulbFromRelHum(t, rh / 100, PRESSURE_PA),
  humidityRatio: (t, rh) => psychrolib.GetHumRatioFromRelHum(t, rh / 100, PRESSURE_PA),
  enthalpy: (t, rh) =>
    psychrolib.GetMoistAirEnthalpy(t, psychrolib.GetHumRatioFromRelHum(t, rh / 100, PRESSURE_PA)) / 1000,
};
functions.allFour = (t, rh) =>
  functions.dewPoint(t, rh) + functions.wetBulb(t, rh) + functions.humidityRatio(t, rh) + functions.enthalpy(t, rh);

let sink = 0;

function pass(f) {
  const start = process.hrtime.bigint();
  for (const [t, rh] of states) {
    sink += f(t, rh);
  }
  return Number(process.hrtime.bigint() - start) / states.length;
}

function quickest(f, seconds) {
  const warm = Date.now() + 400 * seconds;
  do pass(f);
  while (Date.now() < warm);
  let best = Infinity;
  const until = Date.now() + 1000 * seconds;
  do best = Math.min(best, pass(f));
  while (Date.now() < until);
  return best;
}

const seconds = Number(process.argv[2]);
for (const [name, f] of Object.entries(functions)) {
  console.log(`${name}\t${quickest(f, seconds).toFixed(1)}`);
}
if (sink === 0) throw new Error('nothing was computed');

if (process.argv[3]) {
  const { dewPoint, wetBulb, humidityRatio, enthalpy } = functions;
  const row = ([t, rh]) =>
    [t, rh, dewPoint(t, rh), wetBulb(t, rh), humidityRatio(t, rh), enthalpy(t, rh)].join('\t');
  fs.writeFileSync(process.argv[3], states.map(row).join('\n') + '\n');
}
