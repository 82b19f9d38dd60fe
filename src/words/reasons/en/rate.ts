import type { RateReasons } from '../../../model/reasons/rate.js';
import { list, measure } from '../../figures.js';
import type { Sayings } from '../sayings.js';
import { CALCULATION } from './calculation.js';
import { SOURCE } from './source.js';

/** What rules ask of a part, and the steps' sources, in English. */
export const RATE: Sayings<RateReasons> = {
  ...CALCULATION,
  ...SOURCE,
  'ac-voltage/no-system-here': () => 'this port is on no AC system of the site',
  'ac-voltage/system-not-stated': () => 'the AC system isn’t stated',
  'array-current/no-dc-port': () => 'no DC port of an array',
  'array-current/no-array': () => 'no array is behind this port',
  'array-current/source-not-listed': () => 'the source of this input isn’t on the list',
  'array-current/others-not-stated': ({ count, at }) =>
    `the short-circuit current of ${count === 1 ? 'another array' : `${count} other arrays`} joined to it at ${at} isn’t stated (isc_stc, strings_in_parallel)`,
  'array-current/not-stated': ({ arrays }) =>
    `the short-circuit current of ${list(arrays)} isn’t stated (isc_stc, strings_in_parallel)`,
  'array-voltage/no-array': () => 'no array on the list is behind this port',
  'array-voltage/not-known': () => 'the open-circuit voltage of an array isn’t known',
  'array-voltage/stand-in': ({ arrays }) =>
    `a figure of the draft stands in for facts of ${list(arrays)} that aren’t stated`,
  'battery-voltage/no-bus': () => 'this port is no battery bus',
  'battery-voltage/no-battery': () => 'no battery on the list is on this bus',
  'battery-voltage/not-known': ({ batteries }) => `the highest voltage of ${list(batteries)} isn’t known`,
  'control-voltage/no-circuit': () => 'this port is no control circuit',
  'control-voltage/not-stated': () => 'the control voltage isn’t stated',
  'fault-current/no-port': () => 'neither an AC port nor a battery bus',
  'fault-current/not-asked': () => 'no fault current is asked for here',
  'fault-current/known': () => 'the available fault current is known',
  'fault-current/not-stated': () => 'the available fault current isn’t stated',
  'fault-current/not-stated-of': ({ sources }) => `the fault current of ${list(sources)} isn’t stated`,
  'fault-current/passed-on-by': ({ sources }) =>
    `what ${list(sources)} can pass on to a fault isn’t known, as the list doesn’t say all that feeds it`,
  'input-limit/no-dc-input': () => 'this port is no DC input, and feeds none',
  'input-limit/no-converter': () => 'it leads to no converter on the list',
  'input-limit/source-listed': () => 'a source on the list feeds this port',
  'input-limit/combiner-unfed': () =>
    'what feeds its combiner isn’t on the list, so what the converter bears stands in',
  'input-limit/not-known': () => 'neither a source nor the converter’s highest voltage is known',
  'inverter-link/turned-off': () => 'the settings turn this rule off',
  'inverter-link/no-array': () => 'no array is behind this port',
  'inverter-link/no-inverter': () => 'no grid-tie inverter without isolation is on this port',
  'inverter-link/system-not-stated': () => 'the AC system of the inverter isn’t stated',
  'turbine-voltage/no-turbine': () => 'no turbine is behind this port',
  'turbine-voltage/not-known': () => 'the voltage of a turbine isn’t known',
  'withstand/nothing-known': () => 'neither a withstand nor a voltage to assume one by is known',
  'withstand/above-table': () => 'the voltage is above the last row of the table',
  'needed/optimizer-voltage': () => 'the voltage of a string behind DC optimizers is set by them',
  'needed/array-voltage': () =>
    'its open-circuit voltage can’t be worked out, and the list doesn’t say what a converter on it bears',
  'needed/array-rated-by-converter': ({ converter, bears }) =>
    `its open-circuit voltage can’t be worked out; the draft takes the ${measure(bears)} that ${converter} bears, which is no bound, since a design may break it`,
  'needed/coefficient-without-table': ({ technology }) => `no table covers ${technology} modules`,
  'needed/coefficient-below-table': ({ coldest }) =>
    `the table ends at ${measure(coldest)}, and the site is colder`,
  'needed/lowest-temperature': ({ array }) =>
    `the open-circuit voltage of ${array} depends on it; the draft takes the safe side`,
  'needed/cells-of-coefficient': () => 'the coefficient is given for one cell',
  'needed/input-bound': () => 'no source on the list bounds the voltage of its inputs',
  'needed/inverter-system': () => 'it sets the least voltage that the array is rated for',
  'needed/turbine-current': () => 'whether it gives alternating or direct current decides the protector',
  'needed/turbine-voltage': () => 'only the maker knows the voltage at the highest unloaded speed',
  'needed/battery-voltage': () => 'the highest charge voltage of the bus depends on it',
  'needed/conductor-voltage': () => 'the voltage to ground of its conductors depends on it',
  'needed/control-part': () => 'its protector is chosen by it',
};
