import { shortCircuit } from '../../../src/rules/rate/short-circuit.js';
import { fitTable } from '../table.js';

const dc = { current: 'dc', circuit: 'array' } as const;

export const table = fitTable(import.meta.url, shortCircuit, [
  {
    name: 'the fault current itself is enough (NEC 2023 242.8)',
    given: { sccr: 10_000 },
    part: { sccr: 10_000 },
  },
  {
    name: 'less than the fault current',
    given: { sccr: 10_000 },
    part: { sccr: 5_000, sccrDc: 100_000 },
    rejects: 'SCCR 5 kA < 10 kA',
    gap: 0.5,
  },
  {
    name: 'the fault current isn’t known: the part holds up to its own, a person confirms elsewhere',
    part: { sccr: 5_000 },
  },
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).map((basis) => ({
    name: `${basis}, AC, SCCR empty: rejected though the fault current isn’t known (NEC 2023 242.8)`,
    given: { basis },
    part: { sccr: null },
    rejects: 'SCCR isn’t stated',
  })),
  {
    name: 'iec, AC, SCCR empty, the fault current not known: fits',
    given: { basis: 'iec' },
    part: { sccr: null },
  },
  {
    name: 'iec, AC, SCCR empty, the fault current known: rejected',
    given: { basis: 'iec', sccr: 6_000 },
    part: { sccr: null },
    rejects: 'SCCR isn’t stated, and 6 kA is asked',
  },
  {
    name: 'nec, DC, SCCR empty, the current not known: fits',
    given: dc,
    part: { sccrDc: null },
  },
  {
    name: 'nec, DC, SCCR empty, the current known: rejected, whatever the AC rating',
    given: { ...dc, sccr: 25 },
    part: { sccr: 100_000, sccrDc: null },
    rejects: 'DC SCCR isn’t stated, and 0.03 kA is asked',
  },
  {
    name: 'DC: less than asked, whatever the AC rating',
    given: { ...dc, circuit: 'battery', sccr: 20_000 },
    part: { sccr: 100_000, sccrDc: 10_000 },
    rejects: 'DC SCCR 10 kA < 20 kA',
    gap: 0.5,
  },
  {
    name: 'DC: the current itself is enough',
    given: { ...dc, sccr: 10_000 },
    part: { sccr: 1, sccrDc: 10_000 },
  },
  {
    name: 'a turbine’s output is an AC port: SCCR empty is rejected under nec',
    given: { circuit: 'turbine' },
    part: { sccr: null },
    rejects: 'SCCR isn’t stated',
  },
  {
    name: 'a control circuit asks for none',
    given: { circuit: 'control', sccr: 10_000 },
    part: { sccr: null, sccrDc: null },
    outside: 'no fault current is counted on a control circuit',
  },
]);
