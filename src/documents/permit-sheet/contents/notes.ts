import { z } from 'zod';
import { isNec } from '../../../model/editions.js';
import { byNaturalOrder } from '../../../model/natural-order.js';
import type { Plan, PlannedProtector } from '../../../model/plan.js';
import { figure } from '../../../words/figures.js';
import { drawnLength } from '../../../words/lengths.js';
import { portInWords } from '../../../words/port-words.js';
import { tagList } from '../../../words/tag-list.js';
import { partsUsed } from '../../parts/parts-used.js';
import { statedText } from '../../parts/site.js';
import { metric } from '../../parts/contents/code-figures.js';
import type { BlockContext } from './context.js';
import { runsOf, RunsSchema } from '../../parts/contents/runs.js';
import { inputWords } from '../../parts/contents/turbine-inputs.js';

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

interface Port {
  readonly equipment: string;
  readonly port: string;
  readonly open: boolean;
}

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

/** ` (within reach of P-3)`: where a protector that stands elsewhere covers a port; `` where the plan says nothing of the kind. */
function coveredText(plan: Plan, { equipment, port }: Port): string {
  for (const one of plan.notPlaced) {
    if (one.equipment !== equipment || one.port !== port || one.because.code !== 'grid-tie/within-reach')
      continue;
    const { target } = one.because.values;
    const tags = plan.protectors
      .filter((p) => p.required.current === 'ac' && p.ports.some((at) => at.equipment === target))
      .map(({ tag }) => tag);
    return tags.length === 0 ? '' : ` (within reach of ${sorted(tags)})`;
  }
  return '';
}

/** ` (runs indoors in one building)`: why no length of a run asks for one there, in a few words; `` where the plan doesn't speak of runs. */
function runText(plan: Plan, { equipment, port }: Port): string {
  for (const { equipment: at, port: its, because } of plan.notPlaced) {
    if (at !== equipment || its !== port) continue;
    if (because.code === 'port/unused') return ' (unused)';
    if (because.code === 'long-run/indoors') return ' (its runs stay indoors in one building)';
    if (because.code === 'long-run/not-longer') {
      const { limit, basis } = because.values;
      return ` (no run outdoors or between buildings over ${drawnLength(limit.value, basis)})`;
    }
  }
  return '';
}

/** Ports without a protector, equipment by equipment, in one line. */
function portsNote(plan: Plan): string[] {
  const inputs = inputWords(plan);
  const kinds = new Map(plan.site.equipments.map((e) => [e.tag, e.kind]));
  const isOpen = new Set(plan.notPlaced.filter(({ open }) => open).map((n) => `${n.equipment}\n${n.port}`));
  const ports = new Map<string, Port>();
  for (const { equipment, port } of plan.notPlaced) {
    const key = `${equipment}\n${port}`;
    ports.set(key, { equipment, port, open: isOpen.has(key) });
  }
  const named = (open: boolean): string => {
    const byPort = new Map<
      string,
      { readonly port: string; readonly why: string; readonly tags: string[] }
    >();
    for (const one of ports.values()) {
      if (one.open === open) {
        const words =
          kinds.get(one.equipment) === 'signal-line'
            ? 'data or signal line'
            : inputs(one.equipment, [one.port], portInWords(one.port));
        const why = open ? '' : coveredText(plan, one) || runText(plan, one);
        const key = `${words}\n${why}`;
        const same = byPort.get(key) ?? { port: words, why, tags: [] };
        byPort.set(key, same);
        same.tags.push(one.equipment);
      }
    }
    return [...byPort.values()].map(({ port, why, tags }) => `${port} of ${sorted(tags)}${why}`).join('; ');
  };
  const none = named(false);
  const undecided = named(true);
  return [
    ...(none === '' ? [] : [`No protector asked for at: ${none}.`]),
    ...(undecided === '' ? [] : [`Not decided, as a fact is missing: ${undecided}.`]),
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
  'IEC 62446-1, 4.3.5: places, types and ratings of protectors by the schedule; earthing and bonding conductors of the site, size and type:';

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
    ...portsNote(plan),
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
