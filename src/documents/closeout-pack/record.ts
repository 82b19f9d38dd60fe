import { z } from 'zod';
import { isNec } from '../../model/editions.js';
import { byNaturalOrder } from '../../model/natural-order.js';
import type { Plan, PlannedProtector } from '../../model/plan.js';
import type { CrewPackWords } from '../../words/languages/crew-pack-words.js';
import { lengthUnitOf, longestLead } from '../../words/lengths.js';
import { unparted } from '../../words/unparted.js';
import { crewWire } from '../parts/crew-wire.js';

export const RecordSchema = z.object({
  heading: z.string(),
  how: z.string(),
  /** Heads of the columns, in their order. */
  columns: z.array(z.string()),
  rows: z.array(
    z.object({
      tag: z.string(),
      place: z.string(),
      serial: z.string().describe('As the list has it; empty: a box to fill in'),
      torque: z.string().describe('As the catalogue has it'),
      lead: z.string().describe('How long line and ground lead are together at most'),
      /** `L1/N`: between what volts were found. */
      volts: z.array(z.string()),
      /** In place of volts: why none are looked for. */
      voltsNone: z.string(),
      /** Channels with a light or flag of their own. */
      lights: z.array(z.string()),
      lightsNone: z.string(),
    }),
  ),
  below: z.string().describe('What an abbreviation of the table means'),
  none: z.string(),
});
export type RecordView = z.infer<typeof RecordSchema>;

export const SignOffSchema = z.object({
  says: z.string().describe('What is signed for'),
  columns: z.array(z.string()),
  rows: z.array(z.string()),
});

/** Between which conductors the readings of a housing are taken, each pair once. */
function pairs(protector: PlannedProtector, ground: string, words: CrewPackWords): string[] {
  const { bands } = protector.wiring.measuring;
  const texts = bands.flatMap(({ between }) =>
    between.map(({ wire, to }) => `${crewWire(wire, words)}/${to === null ? ground : crewWire(to, words)}`),
  );
  return [...new Set(texts)];
}

function lightTexts({ channels, partDetails }: PlannedProtector, { record }: CrewPackWords): string[] {
  const shown = channels.filter(({ indicator }) => indicator.length > 0);
  const flag = partDetails?.indicator === 'flag' ? ` ${record.flag}` : '';
  return shown.map(({ channel }) => `${String(channel)}${flag}`);
}

/** The commissioning record: a row a protector, with what the plan says and room for what was found. */
export function recordView(plan: Plan, words: CrewPackWords): RecordView {
  const { record } = words;
  const basis = isNec(plan.basis) ? 'nec' : 'iec';
  const { tag, serial, torque, lead, volts, lights, device, initials } = record.columns;
  const unit = lengthUnitOf(plan);
  const protectors = [...plan.protectors].sort((a, b) => byNaturalOrder(a.tag, b.tag));
  return {
    heading: record.heading,
    how: record.how,
    columns: [tag, serial, torque, lead, volts, lights, device, initials],
    rows: protectors.map((protector) => {
      const isClosed = protector.wiring.measuring.state?.code === 'measure-state/do-not-open';
      const shown = lightTexts(protector, words);
      return {
        tag: protector.tag,
        place: protector.place,
        serial: protector.serial,
        torque: unparted(protector.wiring.torque ?? ''),
        lead: unparted(record.atMost(longestLead(protector.wiring, unit))),
        volts: isClosed ? [] : pairs(protector, record.ground[basis], words),
        voltsNone: isClosed ? record.doNotOpen : '',
        lights: shown,
        lightsNone: shown.length === 0 ? record.noLights : '',
      };
    }),
    below: record.groundMeans[basis],
    none: record.nothing,
  };
}

/** Who signs for the work. */
export function signOffView({ signOff }: CrewPackWords): z.infer<typeof SignOffSchema> {
  const { name, licence, signature, date } = signOff.columns;
  const { installer, inspector, owner } = signOff.who;
  return {
    says: signOff.says,
    columns: [signOff.heading, name, licence, signature, date],
    rows: [installer, inspector, owner],
  };
}
