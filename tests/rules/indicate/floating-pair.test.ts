import { floatingPair } from '../../../src/rules/indicate/floating-pair.js';
import { indicatorTable } from '../table.js';

const recorded =
  'either (floating): neither pole is tied to ground: recorded at commissioning; a change from the record: call';
const outside = 'no floating DC pair';

// Common practice, no source.
export const table = indicatorTable(import.meta.url, floatingPair, [
  {
    name: 'an array',
    given: { circuit: 'array', floating: true },
    shows: [
      `sun: ${recorded}`,
      'night: dark (no-sunlight): modules give no voltage at night: look in daylight',
    ],
  },
  {
    name: 'a DC turbine, lit as an array (section 5)',
    given: { circuit: 'array', floating: true, turbineDriven: true },
    shows: [
      `turning: ${recorded}`,
      'still: dark (standing-still): a turbine that stands still gives no voltage: not a fault',
    ],
  },
  {
    name: 'sun and wind on one input: recorded in both, and nothing says when it is dark',
    given: { circuit: 'array', floating: true, turbineDriven: true, sunAndWind: true },
    shows: [`sun: ${recorded}`, `turning: ${recorded}`],
  },
  {
    name: 'sun and wind behind a rapid-shutdown box',
    given: { circuit: 'array', floating: true, sunAndWind: true, rapidShutdown: true },
    shows: [`sun, inverter on: ${recorded}`, `turning: ${recorded}`],
  },
  {
    name: 'an array whose grounding isn’t known',
    given: { circuit: 'array', floating: true, groundingUnknown: true },
    shows: [
      `sun: ${recorded.replace('neither pole is tied to ground', 'its grounding isn’t known')}`,
      'night: dark (no-sunlight): modules give no voltage at night: look in daylight',
    ],
  },
  {
    name: 'a battery never sleeps',
    given: { circuit: 'battery', floating: true },
    shows: [`always: ${recorded}`],
  },
  {
    name: 'a pair with a grounded pole',
    given: { circuit: 'array' },
    outside,
  },
  {
    name: 'an AC system that floats',
    given: { floating: true },
    outside,
  },
  {
    name: 'a control circuit that floats',
    given: { circuit: 'control', floating: true },
    outside,
  },
  {
    name: 'a floating array behind a rapid-shutdown box',
    given: { circuit: 'array', floating: true, rapidShutdown: true },
    shows: [
      `sun, inverter on: ${recorded}`,
      'night: dark (no-sunlight): modules give no voltage at night: look in daylight',
    ],
  },
]);
