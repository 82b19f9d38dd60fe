import { channelText } from '../../words/conductors.js';
import { z } from 'zod';
import type { Plan, PlannedProtector } from '../../model/plan.js';
import { isNec } from '../../model/editions.js';
import { leadLength as leadLengthText } from '../../words/lengths.js';
import { amperes } from '../parts/figures.js';
import { flagWords } from '../parts/flag.js';
import { placeText } from '../parts/schedule.js';
import { measuringView, ReadingRowSchema } from './readings-view.js';
import { equipmentOf } from '../parts/site-index.js';

/** A value of the commissioning record: filled from the list's as-built columns, or a blank line to fill in by hand. */
const RecordValueSchema = z.object({ value: z.string(), toFillIn: z.boolean() });

export const RecordSchema = z.object({
  tag: z.string(),
  part: z.string(),
  place: z.string(),
  serial: RecordValueSchema,
  leadLength: RecordValueSchema,
  faultCurrent: RecordValueSchema,
  /** What was measured before connecting; what was found is filled in by hand. */
  /** Why nothing is opened or measured there; empty: it may be. */
  doNotOpen: z.string(),
  readings: z.array(ReadingRowSchema),
  /** One line a channel and state: what is expected; what was seen is filled in by hand. */
  lights: z.array(
    z.object({ channel: z.number().int(), conductor: z.string(), state: z.string(), expected: z.string() }),
  ),
});
export type CommissioningRecord = z.infer<typeof RecordSchema>;

export const CheckListSchema = z.object({ heading: z.string(), checks: z.array(z.string()) });

const BLANK = { value: '', toFillIn: true };

/** A figure that the list states of the equipment at a protector, in its SI unit. */
function asBuilt(plan: Plan, protector: PlannedProtector, field: string): number | undefined {
  for (const port of protector.ports) {
    const fact = equipmentOf(plan, port.equipment)?.facts.find((f) => f.field === field);
    if (typeof fact?.value === 'number') return fact.value;
  }
  return undefined;
}

/** The commissioning record of each housing. */
export function records(plan: Plan): CommissioningRecord[] {
  return plan.protectors.map((p) => {
    const fault = asBuilt(plan, p, 'fault_current');
    const lead = asBuilt(plan, p, 'lead_length');
    const { doNotOpen, readings } = measuringView(p);
    return {
      tag: p.tag,
      part: p.existing === null ? (p.part ?? 'no part chosen') : `existing: ${p.existing}`,
      place: placeText(p),
      serial: p.serial === '' ? BLANK : { value: p.serial, toFillIn: false },
      leadLength:
        lead === undefined
          ? BLANK
          : { value: leadLengthText(p.wiring.leadLengthPlanned, plan.basis), toFillIn: false },
      faultCurrent:
        fault === undefined ? BLANK : { value: `${amperes(fault, '')} on the list`, toFillIn: false },
      doNotOpen,
      readings,
      lights: p.channels.flatMap((c) =>
        c.indicator.map((i) => ({
          channel: c.channel,
          conductor: channelText(c),
          state: i.state,
          expected: i.shows === 'good' ? `good flag (${flagText(p)})` : i.shows,
        })),
      ),
    };
  });
}

/** A flag is read by the words of its part, not as on or off. */
function flagText(protector: PlannedProtector): string {
  const words = flagWords(protector);
  return words === '' ? 'by the instructions of the part' : words;
}

/** The installer's checks, in the order of the work. */
export function checkLists(plan: Plan): z.infer<typeof CheckListSchema>[] {
  const outdoors = plan.protectors.some((p) => p.outdoors);
  const flags = plan.protectors.filter((p) => p.partDetails?.indicator === 'flag').map((p) => p.tag);
  const twoSupplies = plan.protectors.filter((p) => p.wiring.fedFromTwoSupplies).map((p) => p.tag);
  return [
    {
      heading: 'Before you start',
      checks: [
        'The pack on site is the latest revision and is not a draft.',
        'The equipment on site is what the schedule names: maker, model, voltages.',
        'The part and its ratings on the label of each protector are those of the schedule.',
        'The available fault current at each AC port is known and is not above the SCCR of the part.',
        'Local code and the instructions of each part were read; where they differ from this pack, they go first.',
      ],
    },
    {
      heading: 'At each box, before connecting',
      checks: [
        'Meter and leads are of the category and rating of the wiring note, and shock and arc-flash protection was settled before the enclosure was opened.',
        'With on and off what the wiring note says, by name, and never a turning turbine without its load, a qualified person took every reading of the wiring note: DC pole to pole with its sign first. None was outside its figures, none showed a ground fault; what was due again was measured again.',
        ...(plan.isolation.parts.some((part) => part.unknown.length > 0)
          ? ['SOURCES NOT ALL KNOWN: each source that the list does not name was found before work began.']
          : []),
        'Then the steps of section 1 that the wiring note names were taken in their order, each device locked, tagged and written down; what stays live was covered or kept away from.',
        ...(twoSupplies.length === 0 ? [] : [`Both supplies are open at ${twoSupplies.join(', ')}.`]),
        'Each conductor was proved dead before it was touched.',
      ],
    },
    {
      heading: 'At each box, connecting',
      checks: [
        'Each conductor is on the channel that the wiring note names, by name and not by colour alone.',
        isNec(plan.basis)
          ? 'The ground lead goes to the equipment-ground bar of that enclosure, not to a sub-panel’s neutral bar and not to a rod that is not bonded.'
          : 'The earth lead goes to the protective earth bar of that enclosure, at the service to the main earthing terminal; not to a neutral bar and not to an electrode that is not bonded.',
        'Leads are as short and straight as they can be, tied together, without coils; the length is written down.',
        'The torque is that of the instructions of the part.',
        ...(plan.protectors.some((p) => p.wiring.groundTerminal !== null)
          ? [
              isNec(plan.basis)
                ? 'Where an enclosure has no ground bar: a ground terminal is fitted, and the cable’s equipment grounding conductor lands on it; no electrode alone.'
                : 'Where an enclosure has no earth bar: an earth terminal is fitted, and the cable’s protective conductor lands on it; no electrode alone.',
            ]
          : []),
        'No channel is left unwired.',
        ...(outdoors
          ? [
              'Outdoors: the enclosure type is that of the schedule, entries are sealed, the lights can be seen.',
            ]
          : []),
      ],
    },
    {
      heading: 'After power is back',
      checks: [
        'Power came back by the way back of section 1: locks and tags off once nobody was at the equipment, turbines let go after all that loads them, automatic starts last.',
        'Each light was looked at in each state of the wiring note and written down in the record.',
        ...(flags.length === 0
          ? []
          : [
              `Each flag shows that its part is good (${flags.join(', ')}); a part whose flag says used up is replaced, never written down as good.`,
            ]),
        'Labels are fixed beside each protector.',
        'Protectors that were disconnected for an insulation test are connected again.',
        'The owner has the sheet and was shown each light.',
      ],
    },
  ];
}
