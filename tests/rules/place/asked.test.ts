import { asked } from '../../../src/rules/place/asked.js';
import { placementTable } from '../table.js';

export const table = placementTable(import.meta.url, asked, [
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}, protect yes: one at the main port, counted as recommended (section 5)`,
    given: { basis, protect: true },
    then: 'recommended' as const,
    because: 'the list says protect "yes"',
  })),
  {
    name: 'protect yes, at a port that isn’t the main one',
    given: { kind: 'inverter-charger', port: 'dc-in', protect: true, mainPort: false },
    then: 'not-placed',
    because: 'the list asks for one at the main port, which is another',
  },
  {
    name: 'protect no waives what isn’t required',
    given: { protect: false },
    then: 'waived',
    because: 'the list says protect "no"',
  },
  {
    name: 'protect no waives at every port',
    given: { kind: 'inverter-charger', port: 'dc-in', protect: false, mainPort: false },
    then: 'waived',
    because: 'the list says protect "no"',
  },
  {
    name: 'nothing said',
    given: {},
    then: 'not-placed',
    because: 'the list doesn’t ask for one',
  },
  {
    name: 'a transfer switch has no protector of its own',
    given: { kind: 'transfer-switch', protect: true },
    then: 'not-looked-at',
  },
  ...(['dc-load', 'dc-panel', 'diversion-load'] as const).map((kind) => ({
    name: `protect yes on a ${kind}: at its DC input`,
    given: { kind, port: 'dc-bus' as const, protect: true },
    then: 'recommended' as const,
    because: 'the list says protect "yes"',
  })),
  {
    name: 'protect yes on a transformer: at its AC out, its main port, not at its AC in',
    given: { kind: 'transformer', port: 'ac-in', protect: true, mainPort: false },
    then: 'not-placed',
    because: 'the list asks for one at the main port, which is another',
  },
  {
    name: 'a disconnect has no protector of its own',
    given: { kind: 'disconnect', port: 'terminals', protect: true },
    then: 'not-looked-at',
  },
  {
    name: 'protect yes at a drive’s motor: a conflict, and none (section 5)',
    given: { kind: 'load', tag: 'PUMP', drive: 'DRV-1', protect: true },
    then: 'not-placed',
    because:
      'the output of the pump drive DRV-1 carries switched pulses, which a protector for a sine wave doesn’t bear',
    notes: [
      'place/asked-at-motor PUMP.protect: protect is "yes" for PUMP, but what DRV-1 gives it are switched pulses, which a protector for a sine wave doesn’t bear.',
    ],
  },
  {
    name: 'protect yes on the drive itself: at its input',
    given: {
      kind: 'pump-drive',
      port: 'ac-out',
      tag: 'DRV-1',
      drive: 'DRV-1',
      protect: true,
      mainPort: false,
    },
    then: 'not-placed',
    because: 'the list asks for one at the main port, which is another',
  },
  {
    name: 'protect no at a drive’s motor says nothing else than the drive does',
    given: { kind: 'load', drive: 'DRV-1', protect: false },
    then: 'waived',
    because: 'the list says protect "no"',
  },
]);
