import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import type { Kind } from '../../model/words.js';
import { filled } from '../../words/languages.js';
import type { OwnerStrings } from '../../words/languages/owner-strings.js';
import type { AsBuilt } from '../parts/as-built.js';
import type { DocumentContext } from '../parts/context.js';
import type { Needs } from './looks.js';
import { OwnerBoxSchema, ownerBoxes } from './boxes.js';
import { RunsSchema } from '../parts/contents/runs.js';
import { datesWhole, workTold } from './first-day.js';

export const OwnerSheetSchema = z.object({
  language: z.string().describe('BCP 47 tag'),
  style: z.string().describe('All CSS: fonts, accent colour, styles and page rules'),
  title: z.string(),
  draft: z.boolean().describe('True for a draft'),
  draftText: z.string(),
  company: z.string().describe('Name of the company'),
  logo: z.string().describe('A data: URL, empty without a logo'),
  when: z.string(),
  how: z.string(),
  call: z
    .object({ heading: z.string(), number: z.string(), write: z.string() })
    .describe('The phone number; where it is empty, `write` asks for it'),
  boxes: z.array(OwnerBoxSchema).describe('The protectors room by room, those that look alike together'),
  blindLights: z.string().describe('About lights that should stay off; empty where there is none'),
  actHeading: z.string(),
  actColumns: z.object({ see: z.string(), do: z.string() }),
  acts: z
    .array(z.object({ see: z.string(), do: z.string() }))
    .describe('What to do when one is not as shown'),
  warningWord: z.string(),
  hazard: z.string(),
  never: z.array(z.string()).describe('What never to do'),
  logHeading: z.string(),
  logHow: z.string(),
  logColumns: z.array(z.string()),
  logYes: z.string(),
  logYear: z.string().describe('Before a blank for the year'),
  checks: z
    .array(z.string())
    .describe('Rows to tick: months, then storms; empty where there is no protector'),
  limitsHeading: z.string(),
  limits: z.array(z.string()).describe('What the protectors do not do'),
  deference: z.string(),
  job: z.string().describe('Its id and name'),
  fitted: z
    .string()
    .describe('Before a blank for the day on which they were fitted; empty where it is known'),
  work: z
    .array(RunsSchema)
    .describe('When they were fitted, and whether the sheet shows the plan or the work'),
});
export type OwnerSheetView = z.infer<typeof OwnerSheetSchema>;

/** Rows for a look after a storm. */
const STORMS = 4;

/** Kinds whose words name nothing that an owner could point at. */
const VAGUE: ReadonlySet<Kind> = new Set<Kind>(['load', 'other', 'control-circuit']);

/** The things that have ports and no protector at any of them. */
function bareThings(plan: Plan, strings: OwnerStrings): string[] {
  const guarded = new Set(plan.protectors.flatMap((p) => p.ports.map((port) => port.equipment)));
  const things = plan.site.equipments
    .filter(({ tag, kind, ports }) => ports.length > 0 && !guarded.has(tag) && !VAGUE.has(kind))
    .map(({ kind }) => strings.things[kind]);
  const also = new Set(
    plan.site.equipments.filter(({ tag }) => guarded.has(tag)).map(({ kind }) => strings.things[kind]),
  );
  // Of two alike, one guarded, an owner couldn't tell which is meant.
  return [...new Set(things)].filter((thing) => thing !== '' && !also.has(thing));
}

function actsOf(needs: Needs, number: string, { acts }: OwnerStrings): OwnerSheetView['acts'] {
  const own = needs.flag && needs.light ? [acts.either] : needs.flag ? [acts.flag] : [];
  return [
    ...own,
    ...(needs.light && !needs.flag ? [acts.light] : []),
    ...(needs.cameOn ? [acts.cameOn] : []),
    ...(needs.ungrounded ? [acts.ungrounded] : []),
    acts.heat,
  ].map((act) => ({ see: act.see, do: filled(act.do, { number }) }));
}

/**
 * The view of the owner's sheet, in one language.
 * @param plan with what is there in its place, where something came back from the work
 */
export function ownerSheetView(
  plan: Plan,
  context: DocumentContext,
  strings: OwnerStrings,
  style: string,
  built?: AsBuilt,
): OwnerSheetView {
  const work = workTold(built, strings);
  const { company } = context.settings;
  const { boxes, needs } = ownerBoxes(plan, strings, built);
  const bare = bareThings(plan, strings);
  const [hazard = '', ...never] = strings.never;
  const none = plan.protectors.length === 0;
  return {
    language: strings.language,
    style,
    title: strings.title,
    draft: !plan.submittable,
    draftText: strings.draftText,
    company: company.name,
    logo: context.logo ?? '',
    when: none ? '' : strings.when,
    how: none ? strings.none : strings.how,
    call: { heading: strings.callHeading, number: company.phone, write: strings.callUnknown },
    boxes,
    blindLights: needs.cameOn ? strings.blindLights : '',
    actHeading: strings.actHeading,
    actColumns: { see: strings.seeColumn, do: strings.doColumn },
    acts: actsOf(needs, company.phone === '' ? strings.callWithout : company.phone, strings),
    warningWord: strings.warningWord,
    hazard,
    never,
    logHeading: strings.logHeading,
    logHow: strings.logHow,
    logColumns: [...strings.logColumns],
    logYes: strings.logYes,
    logYear: strings.logYear,
    checks: none ? [] : [...strings.months, ...Array<string>(STORMS).fill(strings.storm)],
    limitsHeading: strings.limitsHeading,
    limits: [
      ...strings.limits,
      ...(bare.length === 0
        ? []
        : [filled(bare.length === 1 ? strings.bareOne : strings.bare, { list: bare.join(', ') })]),
    ],
    deference: strings.deference,
    job: [`${strings.job} ${plan.job}`, plan.jobName].filter((text) => text !== '').join(', '),
    fitted: none ? '' : work.blank,
    work: none ? [] : work.sentences.map(datesWhole),
  };
}
