// The peer of the command `coatwright air`: one state, told, with psychrolib under node.
//
// usage: node air.js AIR_C RH_PCT
'use strict';

const psychrolib = require('psychrolib');

psychrolib.SetUnitSystem(psychrolib.SI);
const t = Number(process.argv[2]);
const rh = Number(process.argv[3]) / 100;
const pressurePa = 101325;
const ratio = psychrolib.GetHumRatioFromRelHum(t, rh, pressurePa);
console.log(`dew point ${psychrolib.GetTDewPointFromRelHum(t, rh).toFixed(1)} °C`);
console.log(`wet bulb  ${psychrolib.GetTWetBulbFromRelHum(t, rh, pressurePa).toFixed(1)} °C`);
console.log(`water     ${(1000 * ratio).toFixed(1)} g/kg`);
console.log(`enthalpy  ${(psychrolib.GetMoistAirEnthalpy(t, ratio) / 1000).toFixed(1)} kJ/kg`);
