import { z } from 'zod';
import { isNec } from '../../../model/editions.js';
import { byNaturalOrder } from '../../../model/natural-order.js';
import type { Plan, PlannedProtector } from '../../../model/plan.js';
import { figure } from '../../../words/figures.js';
import { tagList } from '../../../words/tag-list.js';
import { partsUsed } from '../../parts/parts-used.js';
import { statedText } from '../../parts/site.js';
import { metric } from '../../parts/contents/code-figures.js';
import { bareNotes } from './bare-ports.js';
import type { BlockContext } from './context.js';
import { runsOf, RunsSchema } from '../../parts/contents/runs.js';

export const PermitNotesSchema = z.object({
  title: z.string(),
  rows: z.array(
    z.object({
      text: RunsSchema,
      /** True where something is left to be filled in behind it. */
      fill: z.boolean(),
    }),
  ),
});
export type PermitNotesView = z.infer<typeof PermitNotesSchema>;

const FIRST =
  'Local code, the authority having jurisdiction, the instructions of each product and the judgement of a licensed person go before these sheets.';

const NOT_COVERED = [
  'lightning protection systems and direct strikes',
  'data, telephone and antenna lines',
  'sizes of circuit conductors, breakers and electrodes',
  'protectors inside equipment',
] as const;

const sorted = (tags: readonly string[]): string => tagList([...tags].sort(byNaturalOrder));

/** Protectors by what is told of them, in the order of the first of each; those of which nothing is told are left out. */
function byText(
  plan: Plan,
  tell: (protector: PlannedProtector) => string,
): readonly (readonly [text: string, tags: readonly string[]])[] {
  const groups = new Map<string, string[]>();
  for (const protector of plan.protectors) {
    const text = tell(protector);
    if (text !== '') groups.set(text, [...(groups.get(text) ?? []), protector.tag]);
  }
  return [...groups];
}

/** `10 AWG at P-1, P-2; 6 AWG at P-3`; without tags where all have the same. */
function told(plan: Plan, tell: (protector: PlannedProtector) => string): string {
  const groups = byText(plan, tell);
  const [only] = groups;
  if (groups.length === 1 && only && only[1].length === plan.protectors.length) return only[0];
  return groups.map(([text, tags]) => `${sorted(tags)}: ${text}`).join('; ');
}

const leadsNote = (ground: string): string =>
  `Leads by the schedule: straight, tied together, no coils, no needless bends; longest: line lead plus ${ground} lead.`;

/** Where ground leads go stands in the schedule; here, where none goes. */
function groundNote(plan: Plan): string {
  const nec = isNec(plan.basis);
  const own = nec ? 'a rod' : 'an electrode';
  return `${nec ? 'Ground' : 'Earth'} leads land in the enclosure of their protector, as the schedule says: never on the neutral bar of a ${nec ? 'sub-panel' : 'sub-distribution board'}, never on ${own} of their own.`;
}

function torqueNote(plan: Plan): string {
  const of = told(plan, ({ part, existing, wiring: { torque, wireRange } }) => {
    if (part === null || existing !== null) return '';
    const told = [
      torque === null ? '' : `torque ${torque}`,
      wireRange === null ? '' : `terminals for ${metric(wireRange)}`,
    ].filter((one) => one !== '');
    return told.length === 0 ? 'by the instructions of the part' : told.join(', ');
  });
  return of === '' ? '' : `${of.slice(0, 1).toUpperCase()}${of.slice(1)}.`;
}

/** Where residual current devices stand no list says: 3+1 parts are fit on either side of one. */
function residualNote({ basis, earthing }: Plan): string[] {
  if (isNec(basis) || earthing !== 'TT') return [];
  return [
    'Residual current devices of the TT system: by others, not on the equipment list. The protectors are connected 3+1, so that they may stand ahead of one; one ahead of a protector must withstand its surge currents, by the maker.',
  ];
}

function stated(plan: Plan, field: string): string | undefined {
  const fact = plan.facts.find((one) => one.field === field);
  return fact && statedText(fact);
}

const LIGHTNING: Readonly<Record<string, string>> = {
  none: 'none',
  isolated: 'isolated from the installation',
  attached: 'attached to the structure',
};

function siteNote(plan: Plan): string {
  const lightning = stated(plan, 'lightning_protection');
  const coldest = plan.facts.find((one) => one.field === 'lowest_temp');
  const lowest = typeof coldest?.value === 'number' ? figure(coldest.value, coldest.unit) : undefined;
  const source = stated(plan, 'lowest_temp_source');
  return [
    ...(lightning === undefined
      ? []
      : [`Lightning protection system: ${LIGHTNING[lightning] ?? lightning}.`]),
    ...(lowest === undefined
      ? []
      : [`Lowest ambient temperature ${lowest}${source === undefined ? '' : ` (${source})`}.`]),
  ].join(' ');
}

const BONDING =
  'IEC 62446-1, 4.3.5: places, types and ratings of protectors by the schedule; size and type of the earthing and bonding conductors of the site by others, sheet';

/**
 * Which data sheets are appended: a part whose sheet is missing is named, so that none is looked for in vain.
 * @param appended undefined: none were asked for
 */
function sheetsNote(plan: Plan, appended: readonly string[] | undefined): string {
  if (appended === undefined) return 'Data sheets of the parts: none appended to these sheets; to follow.';
  const used = partsUsed(plan);
  const there = used.filter((part) => appended.includes(part));
  const missing = used.filter((part) => !appended.includes(part));
  if (there.length === 0) return `Data sheets: none found to append; to follow: ${missing.join(', ')}.`;
  if (missing.length === 0) return 'Data sheets of the parts: appended.';
  return `Data sheets appended: ${there.join(', ')}; to follow: ${missing.join(', ')}.`;
}

/** The notes of the sheets; what goes before everything stands first. */
export function permitNotes(plan: Plan, { dataSheets }: BlockContext): PermitNotesView {
  const isPlaced = plan.protectors.length > 0;
  const texts = [
    FIRST,
    ...(isPlaced
      ? [leadsNote(isNec(plan.basis) ? 'ground' : 'earth'), groundNote(plan), torqueNote(plan)]
      : []),
    ...bareNotes(plan),
    ...(isPlaced ? residualNote(plan) : []),
    siteNote(plan),
    `Not covered: ${NOT_COVERED.join('; ')}; the state of existing wiring, bonding and ${isNec(plan.basis) ? 'grounding' : 'earthing'}.`,
    ...(isPlaced ? [sheetsNote(plan, dataSheets)] : []),
  ];
  const runs = runsOf(plan);
  const rows = texts.filter((text) => text !== '').map((text) => ({ text: runs(text), fill: false }));
  return {
    title: 'Notes',
    rows: isNec(plan.basis) ? rows : [...rows, { text: runs(BONDING), fill: true }],
  };
}
