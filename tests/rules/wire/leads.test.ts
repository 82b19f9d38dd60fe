import { leads } from '../../../src/rules/wire/leads.js';
import { wiringTable } from '../table.js';

const notes = [
  'Leads short, straight and tied together; no coils, no needless bends.',
  'Disconnect the protector before an insulation test, and connect it again after.',
];
const awg = '14 AWG copper or 12 AWG aluminium';
const panelBar = 'the equipment-ground bar of this enclosure, not its neutral bar and not a rod of its own';
const earthBar =
  'the protective earth bar of this enclosure, not its neutral bar and not an electrode of its own';
const iecLeads =
  'earth lead 6 mm2, live leads 2.5 mm2; of a class T1 part 16 mm2 and 6 mm2 (values from memory)';
const service = { groundTo: 'the bonded bar of the service equipment', smallest: awg, notes };

export const table = wiringTable(import.meta.url, leads, [
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).flatMap((basis) => [
    {
      name: `${basis}, a panel: 14 AWG Cu or 12 AWG Al (NEC 2023 242.28)`,
      given: { basis },
      fires: true,
      then: { groundTo: panelBar, smallest: awg, notes },
    },
    {
      name: `${basis}, the service: the bonded bar`,
      given: { basis, atService: true },
      fires: true,
      then: service,
    },
  ]),
  ...(['none', 'impedance'] as const).map((grounding) => ({
    name: `a service whose grounding is ${grounding}: the bar where the grounding electrode conductor lands (common practice, no source)`,
    given: { grounding, atService: true },
    fires: true,
    then: {
      groundTo: 'the bar of the service equipment where the grounding electrode conductor lands',
      smallest: awg,
      notes,
    },
  })),
  {
    name: 'a corner-grounded service: its bar is a bonded one',
    given: { grounding: 'corner', atService: true },
    fires: true,
    then: service,
  },
  {
    name: 'a panel of an ungrounded system: the equipment-ground bar',
    given: { grounding: 'none' },
    fires: true,
    then: { groundTo: panelBar, smallest: awg, notes },
  },
  {
    name: 'iec, an ungrounded service: the main earthing terminal',
    given: { basis: 'iec', earthing: 'IT', grounding: 'none', atService: true },
    fires: true,
    then: {
      groundTo:
        'the main earthing terminal or the protective earth bar of the service equipment, not its neutral bar',
      smallest: iecLeads,
      notes,
    },
  },
  {
    name: 'nec knows no class T1',
    given: { classOneAsked: true, atService: true },
    fires: true,
    then: service,
  },
  {
    name: 'DC, in an enclosure that may have no bar (common practice, no source)',
    given: { circuit: 'array', current: 'dc' },
    fires: true,
    then: {
      groundTo:
        'the equipment-ground bar or terminal of this enclosure, not a rod of its own that isn’t bonded',
      smallest: awg,
      notes,
    },
  },
  {
    name: 'iec: 6 mm2, of a class T1 part more (IEC 60364-5-53 cl. 534.4.10, value from memory)',
    given: { basis: 'iec' },
    fires: true,
    then: {
      groundTo: earthBar,
      smallest: iecLeads,
      notes,
    },
  },
  {
    name: 'iec, class T1 asked for: 16 mm2 (IEC 60364-5-53 cl. 534.4.10, value from memory)',
    given: { basis: 'iec', classOneAsked: true },
    fires: true,
    then: {
      groundTo: earthBar,
      smallest: 'earth lead 16 mm2, live leads 6 mm2 (values from memory)',
      notes,
    },
  },
  {
    name: 'iec, the service: the main earthing terminal, and no bonded bar, which a TT system has not (common practice, no source)',
    given: { basis: 'iec', earthing: 'TT', atService: true },
    fires: true,
    then: {
      groundTo:
        'the main earthing terminal or the protective earth bar of the service equipment, not its neutral bar',
      smallest: iecLeads,
      notes,
    },
  },
  {
    name: 'iec, DC, in an enclosure that may have no bar (common practice, no source)',
    given: { basis: 'iec', circuit: 'array', current: 'dc' },
    fires: true,
    then: {
      groundTo:
        'the protective earth bar or terminal of this enclosure, not an electrode of its own that isn’t bonded',
      smallest: iecLeads,
      notes,
    },
  },
]);
