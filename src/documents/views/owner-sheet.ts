import { z } from 'zod';
import type { Plan, PlannedProtector } from '../../model/plan.js';
import type { IndicatorCause } from '../../model/words.js';
import { filled } from '../../text/languages.js';
import type { OwnerStrings } from '../../text/languages/owner-strings.js';
import type { DocumentContext } from '../context.js';
import { lightsPicture } from '../drawing/lights.js';
import { SvgSchema } from '../drawing/svg.js';
import { causesOfLights, lightGroups, lightsAlt } from './owner-lights.js';

export const OwnerProtectorSchema = z.object({
  tag: z.string(),
  place: z.string(),
  guards: z.array(z.string()),
  /** `` where the plan knows no lights. */
  picture: SvgSchema.or(z.literal('')),
  /** `Light 2: note a`. */
  notes: z.array(z.string()),
});

export const OwnerSheetSchema = z.object({
  language: z.string().describe('BCP 47 tag'),
  style: z.string().describe('All CSS: fonts, accent colour, styles and page rules'),
  title: z.string(),
  draft: z.boolean().describe('True for a draft'),
  draftText: z.string(),
  facts: z.array(z.object({ what: z.string(), value: z.string() })).describe('Job, place and date'),
  company: z.string().describe('Name of the company'),
  logo: z.string().describe('A data: URL, empty without a logo'),
  intro: z.array(z.string()).describe('What a protector does, in plain sentences'),
  lightsHeading: z.string(),
  lightsHow: z.array(z.string()),
  columns: z.object({ which: z.string(), where: z.string(), pictures: z.string() }),
  protectors: z
    .array(OwnerProtectorSchema)
    .describe('Where each protector is, what it guards, and the picture of its lights'),
  lightsUnknown: z.string(),
  notesHeading: z.string(),
  notes: z
    .array(z.object({ mark: z.string(), text: z.string() }))
    .describe('Why a light can be off, and other notes'),
  actHeading: z.string(),
  actColumns: z.object({ see: z.string(), do: z.string(), soon: z.string() }),
  acts: z
    .array(z.object({ see: z.string(), do: z.string(), soon: z.string() }))
    .describe('What to do when a light is not as shown, and how soon'),
  neverHeading: z.string(),
  warningWord: z.string(),
  never: z.array(z.string()).describe('What never to do'),
  limitsHeading: z.string(),
  limits: z.array(z.string()).describe('What the protectors do not do'),
  deference: z.string(),
  callHeading: z.string(),
  call: z
    .array(z.object({ what: z.string(), value: z.string(), toFillIn: z.boolean() }))
    .describe('Who to call'),
  logHeading: z.string(),
  logHow: z.string(),
  logColumns: z.array(z.object({ text: z.string(), width: z.string() })),
  months: z.array(z.string()).describe('Rows of the check log'),
});
export type OwnerSheetView = z.infer<typeof OwnerSheetSchema>;

/** `a`, `b`... `z`, `aa`... */
function letter(index: number): string {
  const last = String.fromCharCode(97 + (index % 26));
  return index < 26 ? last : `${letter(Math.floor(index / 26) - 1)}${last}`;
}

function guardsText(plan: Plan, protector: PlannedProtector, strings: OwnerStrings): string[] {
  const kindOf = new Map(plan.site.equipments.map((e) => [e.tag, e.kind]));
  const tags = [...new Set(protector.ports.map((p) => p.equipment))];
  const lines = tags.map((tag) =>
    filled(strings.guards, { thing: strings.things[kindOf.get(tag) ?? 'other'], tag }),
  );
  if (lines.length === 0) lines.push(strings.guardsFirst);
  return protector.wiring.fedFromTwoSupplies ? [...lines, strings.twoSupplies] : lines;
}

/** Where a protector is, in the owner's words. */
export function ownerPlace(protector: PlannedProtector, strings: OwnerStrings): string {
  const place = protector.place === '' ? strings.notStated : protector.place;
  return protector.outdoors ? `${place} (${strings.outdoors})` : place;
}

/** Equipments that have ports and no protector at any of them. */
function bareEquipments(plan: Plan, strings: OwnerStrings): string[] {
  const guarded = new Set(plan.protectors.flatMap((p) => p.ports.map((port) => port.equipment)));
  return plan.site.equipments
    .filter((e) => e.ports.length > 0 && !guarded.has(e.tag))
    .map((e) => `${strings.things[e.kind]} (${e.tag})`);
}

function callRows(context: DocumentContext, strings: OwnerStrings): OwnerSheetView['call'] {
  const { name, phone, email, address } = context.settings.company;
  const row = (what: string, value: string): OwnerSheetView['call'][number] =>
    value === '' ? { what, value: strings.callUnknown, toFillIn: true } : { what, value, toFillIn: false };
  const optional = [
    { what: strings.emailField, value: email, toFillIn: false },
    { what: strings.addressField, value: address, toFillIn: false },
  ].filter((r) => r.value !== '');
  return [row(strings.nameField, name), row(strings.phoneField, phone), ...optional];
}

function introText(plan: Plan, strings: OwnerStrings): string[] {
  const count = plan.protectors.length;
  if (count === 0) return [...strings.introNone];
  return (count === 1 ? strings.introOne : strings.intro).map((t) => filled(t, { count }));
}

/** The view of the owner's sheet, in one language. */
export function ownerSheetView(
  plan: Plan,
  context: DocumentContext,
  strings: OwnerStrings,
  style: string,
): OwnerSheetView {
  const causes = new Map<IndicatorCause, string>();
  const protectors = plan.protectors.map((protector) => {
    const groups = lightGroups(plan, protector, strings.states);
    const lettersOf = new Map<string, string[]>();
    for (const { cause, numbers } of causesOfLights(protector)) {
      const mark = causes.get(cause) ?? letter(causes.size);
      causes.set(cause, mark);
      const lights = numbers.join(', ');
      lettersOf.set(lights, [...(lettersOf.get(lights) ?? []), mark]);
    }
    const notes = [...lettersOf].map(([number, marks]) => {
      const mark = filled(strings.noteMark, { letter: marks.join(', ') });
      return `${filled(strings.light, { number })}: ${mark.toLowerCase()}`;
    });
    const flag = protector.partDetails?.indicator === 'flag' ? protector.partDetails.indicatorColor : '';
    if (flag !== '') notes.push(flag);
    return {
      tag: protector.tag,
      place: ownerPlace(protector, strings),
      guards: guardsText(plan, protector, strings),
      picture:
        groups.length === 0 ? '' : lightsPicture(groups, strings, lightsAlt(protector.tag, groups, strings)),
      notes,
    };
  });
  const bare = bareEquipments(plan, strings);
  return {
    language: strings.language,
    style,
    title: strings.title,
    draft: !plan.submittable,
    draftText: strings.draftText,
    facts: [
      { what: strings.job, value: plan.jobName === '' ? plan.job : `${plan.job}, ${plan.jobName}` },
      { what: strings.place, value: plan.address === '' ? strings.notStated : plan.address },
      { what: strings.date, value: context.date },
    ],
    company: context.settings.company.name,
    logo: context.logo ?? '',
    intro: introText(plan, strings),
    lightsHeading: strings.lightsHeading,
    lightsHow: [...strings.lightsHow],
    columns: { which: strings.whichColumn, where: strings.whereColumn, pictures: strings.picturesColumn },
    protectors,
    lightsUnknown: strings.lightsUnknown,
    notesHeading: strings.notesHeading,
    notes: [...causes].map(([cause, mark]) => ({
      mark: filled(strings.noteMark, { letter: mark }),
      text: strings.causes[cause],
    })),
    actHeading: strings.actHeading,
    actColumns: { see: strings.seeColumn, do: strings.doColumn, soon: strings.soonColumn },
    acts: strings.acts.map((a) => ({ ...a })),
    neverHeading: strings.neverHeading,
    warningWord: strings.warningWord,
    never: [...strings.never],
    limitsHeading: strings.limitsHeading,
    limits: [
      ...strings.limits,
      ...(bare.length === 0 ? [] : [filled(strings.bare, { list: bare.join(', ') })]),
    ],
    deference: strings.deference,
    callHeading: strings.callHeading,
    call: callRows(context, strings),
    logHeading: strings.logHeading,
    logHow: strings.logHow,
    logColumns: strings.logColumns.map((text, index) => ({
      text,
      width: ['w8', 'w12', '', 'w24'][index] ?? '',
    })),
    months: [...strings.months],
  };
}
