import type { DefaultReasons } from '../../../model/reasons/defaults.js';
import { quantity } from '../../figures.js';
import type { Sayings } from '../sayings.js';

/** What a default takes a fact for, and what it decides, in English. */
export const DEFAULTS: Sayings<DefaultReasons> = {
  'default-value/not-known': () => 'not known',
  'default-value/by-category': () => 'that of its overvoltage category',
  'default-value/overhead-lines': ({ length }) =>
    `${quantity(length)} of overhead line where the lines aren’t stated`,
  'default-decides/code-and-dc-limit': () => 'decides what the code requires and the limit of DC voltage',
  'default-decides/voltage-to-ground': () => 'decides the voltage to ground',
  'default-decides/surge-current': () => 'decides how much current a protector must bear',
  'default-decides/exposure': () => 'leaves the exposure of the site uncompared',
  'default-decides/risk-level': () => 'decides the calculated risk level',
  'default-decides/worth-protecting': () => 'keeps protection there',
  'default-decides/type': () => 'decides the type',
  'default-decides/enclosure-and-runs': () => 'decides the enclosure and where a long run counts',
  'default-decides/cold-voltage-table': () => 'decides the table of the cold voltage',
  'default-value/no-backfeed': () => '0 A, a grid-tie inverter without a battery',
  'default-decides/overcurrent': () => 'decides whether the protectors there need an overcurrent device',
  'default-decides/withstand': () => 'is an assumption',
  'default-decides/voltage-and-lights': () => 'decides the voltage to ground and the lights',
  'default-decides/dark-light': () => 'decides which light is dark',
  'default-decides/recorded-lights': () => 'leaves its lights to be recorded at commissioning',
  'default-decides/spare-channel': () => 'decides what a spare channel takes',
  'default-decides/building-left-out': () => 'keeps 215.18 and 225.42 out',
  'default-decides/building-asked': () =>
    'decides whether 215.18 and 225.42 ask, since its supply comes from where no building is',
};
