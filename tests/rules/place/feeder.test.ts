import { feeder } from '../../../src/rules/place/feeder.js';
import { placementTable } from '../table.js';

const fromService = { tag: 'SVC', kind: 'service', outside: false } as const;
const fromMain = { tag: 'MP', kind: 'panel', outside: false } as const;

export const table = placementTable(import.meta.url, feeder, [
  ...(['nec-2017', 'nec-2020', 'iec'] as const).map((basis) => ({
    name: `${basis} doesn’t know 215.18 and 225.42`,
    given: { basis, feeders: [fromService] },
    then: 'not-looked-at' as const,
  })),
  {
    name: 'a load is no panel',
    given: { kind: 'load', feeders: [fromService] },
    then: 'not-looked-at',
  },
  {
    name: 'a feeder from the service inside a dwelling: required (NEC 2023 215.18)',
    given: { feeders: [fromService] },
    then: 'required',
    because: 'a feeder from SVC supplies this panel of a dwelling unit (215.18)',
    cites: ['215.18'],
  },
  {
    name: 'the same of sleeping rooms (NEC 2023 215.18)',
    given: { unitOccupancy: 'sleeping', feeders: [fromService] },
    then: 'required',
    because: 'a feeder from SVC supplies this panel of a sleeping unit (215.18)',
  },
  {
    name: 'a feeder from another building, or from a pole: required by the other clause, alone (NEC 2023 225.42)',
    given: { feeders: [{ ...fromService, outside: true }] },
    then: 'required',
    because: 'a feeder from SVC supplies this panel of a dwelling unit (225.42, outside feeder)',
    cites: ['225.42'],
  },
  {
    name: 'an inverter and a generator count as feeders; one of them outside',
    given: {
      feeders: [
        { tag: 'INV-1', kind: 'inverter-charger', outside: false },
        { tag: 'GEN', kind: 'generator', outside: true },
      ],
    },
    then: 'required',
    because: 'a feeder from INV-1 and GEN supplies this panel of a dwelling unit (225.42, outside feeder)',
    cites: ['225.42'],
  },
  ...(['transformer', 'ac-battery'] as const).map((kind) => ({
    name: `a feeder from a ${kind} counts (NEC 2023 215.18)`,
    given: { feeders: [{ tag: 'T-1', kind, outside: false }] },
    then: 'required' as const,
    because: 'a feeder from T-1 supplies this panel of a dwelling unit (215.18)',
    cites: ['215.18'],
  })),
  {
    name: 'a disconnect passes a feeder on and has no panel',
    given: { kind: 'disconnect', feeders: [fromService] },
    then: 'not-looked-at',
  },
  {
    name: 'the job is a dwelling, the building holds none: 215.18 doesn’t ask (NEC 2023)',
    given: { occupancy: 'dwelling', unitOccupancy: 'other', feeders: [fromService] },
    then: 'not-placed',
    because: 'its building holds no dwelling or sleeping unit, so 215.18 doesn’t ask',
    cites: ['215.18'],
  },
  {
    name: 'a barn: 225.42 doesn’t ask, unless it holds such a unit (NEC 2023)',
    given: { occupancy: 'dwelling', unitOccupancy: 'other', feeders: [{ ...fromService, outside: true }] },
    then: 'not-placed',
    because: 'its building holds no dwelling or sleeping unit, so 225.42 doesn’t ask',
    cites: ['225.42'],
  },
  {
    name: 'a workshop job whose other building holds a dwelling unit is asked',
    given: { occupancy: 'other', unitOccupancy: 'dwelling', feeders: [fromService] },
    then: 'required',
    because: 'a feeder from SVC supplies this panel of a dwelling unit (215.18)',
    cites: ['215.18'],
  },
  {
    name: 'a panel at the service’s own place shares its protector (section 0, common practice, no source)',
    given: { tag: 'MP', servicePlaceOf: 'SVC', feeders: [fromService] },
    then: 'not-placed',
    because: 'it stands at the service SVC, whose protector is its protector',
    cites: ['215.18'],
  },
  {
    name: 'nothing feeds it on the list: nothing placed, and a person confirms',
    given: { tag: 'MP' },
    then: 'not-placed',
    because: 'the list doesn’t say what feeds it',
    open: true,
    notes: [
      'place/feed-unknown MP.connects_to: What feeds MP isn’t on the list: whoever works there can’t know all that has to be opened, nor can a rule about feeders ask for a protector.',
    ],
  },
  {
    name: 'a sub-panel beside a main panel: required, and offices differ',
    given: { tag: 'SP', feeders: [fromMain] },
    then: 'required',
    because: 'a feeder from MP supplies this panel of a dwelling unit (215.18)',
    notes: [
      'place/sub-panel SP.connects_to: SP is fed by MP of the same unit: whether 215.18 asks for a second protector there differs between offices.',
    ],
  },
  {
    name: 'a sub-panel outside the main panel’s building: 225.42 leaves no doubt',
    given: { tag: 'SP', feeders: [{ ...fromMain, outside: true }] },
    then: 'required',
    because: 'a feeder from MP supplies this panel of a dwelling unit (225.42, outside feeder)',
  },
  {
    name: 'a run from the service without a length: a place of its own, and a person confirms',
    given: { tag: 'MP', feeders: [fromService], servicePlaceUnknown: true },
    then: 'required',
    because: 'a feeder from SVC supplies this panel of a dwelling unit (215.18)',
    cites: ['215.18'],
    notes: [
      'place/service-place-unknown MP.run_length: The run from the service to MP has no length on the list: the panel counts as a place of its own.',
    ],
  },
  {
    name: 'both doubts at once',
    given: { tag: 'SP', feeders: [fromService, fromMain], servicePlaceUnknown: true },
    then: 'required',
    because: 'a feeder from SVC and MP supplies this panel of a dwelling unit (215.18)',
    notes: ['place/sub-panel SP.connects_to', 'place/service-place-unknown SP.run_length'],
  },
  {
    name: 'a service whose place isn’t known: a place of its own, and the place is asked for, once',
    given: {
      tag: 'MP',
      feeders: [fromService],
      servicePlaceUnknown: true,
      servicePlaceUnplaced: ['SVC'],
    },
    then: 'required',
    because: 'a feeder from SVC supplies this panel of a dwelling unit (215.18)',
    cites: ['215.18'],
    notes: ['fact/place SVC.place'],
  },
]);
