import { arrayPole } from '../../../src/rules/indicate/array-pole.js';
import { indicatorTable } from '../table.js';

const outside = 'no ungrounded pole of a grounded DC source';

export const table = indicatorTable(import.meta.url, arrayPole, [
  {
    name: 'the ungrounded pole of an array: look in daylight (common practice, no source)',
    given: { circuit: 'array', conductor: 'positive' },
    shows: [
      'sun: lit (sunlight): in the sun the modules give it its voltage to ground',
      'night: dark (no-sunlight): modules give no voltage at night: look in daylight',
    ],
  },
  {
    name: 'that of a DC turbine',
    given: { circuit: 'array', conductor: 'positive', turbineDriven: true },
    shows: [
      'turning: lit (turning-dc): the turbine gives it its voltage to ground',
      'still: dark (standing-still): a turbine that stands still gives no voltage: not a fault',
    ],
  },
  {
    name: 'sun and wind on one input: either lights it, and nothing says when it is dark',
    given: { circuit: 'array', conductor: 'positive', turbineDriven: true, sunAndWind: true },
    shows: [
      'sun: lit (sunlight): in the sun the modules give it its voltage to ground',
      'turning: lit (turning-dc): the turbine gives it its voltage to ground',
    ],
  },
  {
    name: 'sun and wind behind a rapid-shutdown box: in the sun only while the inverter is on',
    given: { circuit: 'array', conductor: 'positive', sunAndWind: true, rapidShutdown: true },
    shows: [
      'sun, inverter on: lit (sunlight-inverter-on): in the sun, with the inverter on, the rapid-shutdown box lets the modules’ voltage through; with the inverter off dark is no fault',
      'turning: lit (turning-dc): the turbine gives it its voltage to ground',
    ],
  },
  {
    name: 'the grounded pole',
    given: { circuit: 'array', conductor: 'negative', grounded: true },
    outside,
  },
  {
    name: 'an array that floats',
    given: { circuit: 'array', floating: true },
    outside,
  },
  {
    name: 'a battery',
    given: { circuit: 'battery' },
    outside,
  },
  {
    name: 'behind a rapid-shutdown box: with the inverter off dark is no fault',
    given: { circuit: 'array', conductor: 'positive', rapidShutdown: true },
    shows: [
      'sun, inverter on: lit (sunlight-inverter-on): in the sun, with the inverter on, the rapid-shutdown box lets the modules’ voltage through; with the inverter off dark is no fault',
      'night: dark (no-sunlight): modules give no voltage at night: look in daylight',
    ],
  },
]);
