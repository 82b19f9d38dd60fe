import { highLeg } from '../../../src/rules/wire/high-leg.js';
import { wiringTable } from '../table.js';

const marked = { highLeg: 'L2', because: 'the high leg has a colour and a name of its own' } as const;
const none = { highLeg: null, because: 'no line of this circuit is a high leg' } as const;
const whole = '240/120 high-leg' as const;

// NEC 110.15 (value from memory) and 408.3(E): phase B.
export const table = wiringTable(import.meta.url, highLeg, [
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).map((basis) => ({
    name: `${basis}: L2 of the whole system`,
    given: { basis, system: whole, whole },
    fires: true,
    then: marked,
  })),
  ...(['240 delta', '240'] as const).map((system) => ({
    name: `${system} of such a system can hold it`,
    given: { system, whole },
    fires: true,
    then: marked,
  })),
  ...(['120', '120/240', undefined] as const).map((system) => ({
    name: `${system ?? 'a system that isn’t known'} of such a system doesn’t`,
    given: { system, whole },
    fires: false,
    then: none,
  })),
  ...(['240 delta', undefined] as const).map((other) => ({
    name: `a delta of ${other ?? 'a system that isn’t known'} has none`,
    given: { system: '240 delta' as const, whole: other },
    fires: false,
    then: none,
  })),
  ...(['turbine', 'control', 'array', 'battery'] as const).map((circuit) => ({
    name: `a ${circuit} has none (own case)`,
    given: { circuit, system: whole, whole },
    fires: false,
    then: none,
  })),
  {
    name: 'iec knows no such mark',
    given: { basis: 'iec', system: whole, whole },
    fires: false,
    then: none,
  },
]);
