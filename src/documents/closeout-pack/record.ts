import { z } from 'zod';
import { isNec } from '../../model/editions.js';
import { byNaturalOrder } from '../../model/natural-order.js';
import type { Plan, PlannedProtector } from '../../model/plan.js';
import { asBuiltWords } from '../../words/crew-language.js';
import type { CrewPackWords } from '../../words/languages/crew-pack-words.js';
import type { AsBuiltWords } from '../../words/languages/as-built-words.js';
import { lengthUnitOf, longestLead, paperLead } from '../../words/lengths.js';
import { unparted } from '../../words/unparted.js';
import { crewWire } from '../parts/crew-wire.js';
import type { AsBuilt, BuiltHousing } from '../parts/as-built.js';
import { crewTags } from './crew-tags.js';
import { foundLooks, foundVolts, serialsText } from './found.js';

/** A reading: of what, and what was found; empty: a line to write on. */
const FoundSchema = z.object({ of: z.string(), found: z.string() });
type Found = z.infer<typeof FoundSchema>;

export const RecordSchema = z.object({
  heading: z.string(),
  how: z.string(),
  /** Heads of the columns, in their order. */
  columns: z.array(z.string()),
  rows: z.array(
    z.object({
      tag: z.string(),
      place: z.string(),
      serial: z.string().describe('As recorded, else as the list has it; empty: a box to fill in'),
      torque: z.string().describe('As the catalogue has it'),
      torqueFound: z
        .string()
        .describe('As recorded; empty: a line to write on, and so the other figures found'),
      lead: z.string().describe('How long line and ground lead are together at most'),
      leadFound: z.string(),
      /** `L1/N`: between what volts were found. */
      volts: z.array(FoundSchema),
      /** In place of volts: why none are looked for. */
      voltsNone: z.string(),
      /** Channels with a light or flag of their own. */
      lights: z.array(FoundSchema),
      lightsNone: z.string(),
      device: z.string().describe('The overcurrent device as fitted; empty: a box to fill in'),
      name: z.string().describe('Who fitted it; empty: a box for initials'),
      date: z.string().describe('When'),
    }),
  ),
  below: z.string().describe('What an abbreviation of the table means'),
  more: z.array(z.string()).describe('What was recorded and has no column, a line each'),
  none: z.string(),
});
export type RecordView = z.infer<typeof RecordSchema>;

export const SignOffSchema = z.object({
  says: z.string().describe('What is signed for'),
  columns: z.array(z.string()),
  rows: z.array(
    z.object({
      who: z.string(),
      name: z
        .string()
        .describe('As the record names who did the work; empty: a box, and so licence and date'),
      licence: z.string(),
      date: z.string(),
    }),
  ),
});

/** Between which conductors the readings of a housing are taken, each pair once, with what was found there. */
function pairs(
  protector: PlannedProtector,
  ground: string,
  words: CrewPackWords,
  built: AsBuilt | undefined,
): Found[] {
  const { bands } = protector.wiring.measuring;
  const found = new Map<string, string>();
  for (const probes of bands.flatMap(({ between }) => between)) {
    const { wire, to } = probes;
    const of = `${crewWire(wire, words)}/${to === null ? ground : crewWire(to, words)}`;
    const volts = built === undefined ? '' : foundVolts(built, protector.tag, probes);
    if ((found.get(of) ?? '') === '') found.set(of, volts);
  }
  return Array.from(found, ([of, volts]) => ({ of, found: unparted(volts) }));
}

function lightTexts(
  { tag, channels, partDetails }: PlannedProtector,
  { record }: CrewPackWords,
  built: AsBuilt | undefined,
  looks: AsBuiltWords['looks'],
): Found[] {
  const shown = channels.filter(({ indicator }) => indicator.length > 0);
  const flag = partDetails?.indicator === 'flag' ? ` ${record.flag}` : '';
  return shown.map(({ channel }) => {
    const found = built === undefined ? '' : foundLooks(built, tag, channel, looks);
    // What was seen of a flag says that it is one.
    return { of: `${String(channel)}${found === '' ? flag : ''}`, found };
  });
}

/** What was recorded and has no column: instruments, lead wire, ground point, change; facts that the same housings share stand together. */
function moreLines(built: AsBuilt | undefined, words: CrewPackWords, own: AsBuiltWords): string[] {
  const { what } = own.changed;
  const tagsOf = new Map<string, string[]>();
  for (const { tag, instrument, gauge, groundPoint, change, replaced } of built?.housings.values() ?? []) {
    const facts: readonly (readonly [name: string, text: string])[] = [
      [own.found.instruments, instrument],
      [what.gauge, gauge],
      [what.ground, groundPoint],
      [own.found.change, change],
      [own.found.replaced, replaced],
    ];
    for (const [name, text] of facts) {
      const fact = `${name}: ${text}`;
      if (text !== '') tagsOf.set(fact, [...(tagsOf.get(fact) ?? []), tag]);
    }
  }
  const lines = new Map<string, string[]>();
  for (const [fact, tags] of tagsOf) {
    const whose = crewTags(tags, words);
    lines.set(whose, [...(lines.get(whose) ?? []), fact]);
  }
  return Array.from(lines, ([whose, facts]) => unparted(`${whose}: ${facts.join('; ')}.`));
}

/** The commissioning record: a row a protector, with what the plan says and what was found, or room for it. */
export function recordView(plan: Plan, words: CrewPackWords, built?: AsBuilt): RecordView {
  const { record } = words;
  const own = asBuiltWords(words.language);
  const basis = isNec(plan.basis) ? 'nec' : 'iec';
  const { tag, serial, torque, lead, volts, lights, device, initials } = record.columns;
  const unit = lengthUnitOf(plan);
  const protectors = [...plan.protectors].sort((a, b) => byNaturalOrder(a.tag, b.tag));
  return {
    heading: record.heading,
    how: built === undefined ? record.how : own.found.how,
    columns: [
      tag,
      serial,
      torque,
      lead,
      volts,
      lights,
      device,
      built === undefined ? initials : own.found.by,
    ],
    rows: protectors.map((protector) => {
      const isClosed = protector.wiring.measuring.state?.code === 'measure-state/do-not-open';
      const housing = built?.housings.get(protector.tag);
      const shown = lightTexts(protector, words, built, own.looks);
      return {
        tag: protector.tag,
        place: protector.place,
        serial: housing === undefined ? protector.serial : serialsText(housing, own),
        torque: unparted(protector.wiring.torque ?? ''),
        torqueFound: unparted(housing?.torque ?? ''),
        lead: unparted(record.atMost(longestLead(protector.wiring, unit))),
        leadFound: housing?.lead == null ? '' : unparted(paperLead(housing.lead, unit)),
        volts: isClosed ? [] : pairs(protector, record.ground[basis], words, built),
        voltsNone: isClosed ? record.doNotOpen : '',
        lights: shown,
        lightsNone: shown.length === 0 ? record.noLights : '',
        device: unparted(housing?.device ?? ''),
        name: housing?.name ?? '',
        date: housing?.date ?? '',
      };
    }),
    below: record.groundMeans[basis],
    more: moreLines(built, words, own),
    none: record.nothing,
  };
}

/** Who signs for the work; of an installer whom the record names, name, licence and date. */
export function signOffView(
  { signOff }: CrewPackWords,
  built: AsBuilt | undefined,
): z.infer<typeof SignOffSchema> {
  const { name, licence, signature, date } = signOff.columns;
  const { installer, inspector, owner } = signOff.who;
  const crew = new Map<string, { readonly of: BuiltHousing; readonly days: Set<string> }>();
  for (const of of built?.housings.values() ?? []) {
    if (of.name === '') continue;
    const key = JSON.stringify([of.name, of.licence]);
    const known = crew.get(key) ?? { of, days: new Set() };
    crew.set(key, known);
    if (of.date !== '') known.days.add(of.date);
  }
  const none = { name: '', licence: '', date: '' };
  const installers = Array.from(crew.values(), ({ of, days }) => ({
    who: installer,
    name: of.name,
    licence: of.licence,
    date: [...days].sort().join(', '),
  }));
  return {
    says: signOff.says,
    columns: [signOff.heading, name, licence, signature, date],
    rows: [
      ...(installers.length === 0 ? [{ who: installer, ...none }] : installers),
      { who: inspector, ...none },
      { who: owner, ...none },
    ],
  };
}
