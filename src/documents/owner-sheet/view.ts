import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import type { IndicatorCause } from '../../model/words.js';
import { filled } from '../../words/languages.js';
import type { OwnerStrings } from '../../words/languages/owner-strings.js';
import type { DocumentContext } from '../parts/context.js';
import { OwnerLookSchema, ownerPictures, OwnerProtectorSchema } from './owner-pictures.js';

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
  columns: z.object({ which: z.string(), where: z.string(), pictures: z.string(), look: z.string() }),
  protectors: z
    .array(OwnerProtectorSchema)
    .describe('Where each protector is, what it guards, and the picture of its lights'),
  looks: z
    .array(OwnerLookSchema)
    .describe('Pictures that several protectors share; empty where each has its own beside it'),
  lightsUnknown: z.string(),
  notesHeading: z.string(),
  notes: z
    .array(z.object({ mark: z.string(), text: z.string(), firstDay: z.string() }))
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

/** Equipments that have ports and no protector at any of them, like things together. */
function bareEquipments(plan: Plan, strings: OwnerStrings): string[] {
  const guarded = new Set(plan.protectors.flatMap((p) => p.ports.map((port) => port.equipment)));
  const things = new Map<string, string[]>();
  for (const { tag, kind, ports } of plan.site.equipments) {
    if (ports.length === 0 || guarded.has(tag)) continue;
    const thing = strings.things[kind];
    things.set(thing, [...(things.get(thing) ?? []), tag]);
  }
  return [...things].map(([thing, tags]) => `${thing} (${tags.join(', ')})`);
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
  const { protectors, looks } = ownerPictures(plan, strings, causes);
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
    columns: {
      which: strings.whichColumn,
      where: strings.whereColumn,
      pictures: strings.picturesColumn,
      look: strings.lookColumn,
    },
    protectors,
    looks,
    lightsUnknown: strings.lightsUnknown,
    notesHeading: strings.notesHeading,
    notes: [...causes].map(([cause, mark]) => ({
      mark: filled(strings.noteMark, { letter: mark }),
      text: strings.causes[cause],
      firstDay: cause === 'floating' ? strings.firstDay : '',
    })),
    actHeading: strings.actHeading,
    actColumns: { see: strings.seeColumn, do: strings.doColumn, soon: strings.soonColumn },
    acts: [...(causes.has('flag') ? [strings.actFlag] : []), ...strings.acts].map((a) => ({ ...a })),
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
      width: ['w10', 'w12', '', 'w24'][index] ?? '',
    })),
    months: [...strings.months],
  };
}
