import { z } from 'zod';
import { isNec } from '../../../model/editions.js';
import { byNaturalOrder } from '../../../model/natural-order.js';
import type { Calculation, Plan } from '../../../model/plan.js';
import { lengthUnitOf, paperLength } from '../../../words/lengths.js';
import { workingInShort } from '../../../words/steps/in-short.js';
import { tagList } from '../../../words/tag-list.js';
import { CALCULATION_KINDS, type CalculationKind } from './calculation-kinds.js';
import { calculationLine, LIMITS, type CalculationLine } from './calculation-line.js';
import { runsOf, RunsSchema, wordRuns } from './runs.js';

export const CalculationSummarySchema = z.object({
  title: z.string(),
  rows: z.array(
    z.object({
      quantity: z.string(),
      /** The same in pieces: no word is broken at its hyphen. */
      name: RunsSchema,
      /** The first of them stands beside the quantity. */
      lines: z.array(
        z.object({ tags: RunsSchema, working: RunsSchema, result: z.string(), against: RunsSchema }),
      ),
    }),
  ),
  none: z.string(),
});
export type CalculationSummaryView = z.infer<typeof CalculationSummarySchema>;

/** Lines that are one, with the tags of all. */
interface Group extends CalculationLine {
  readonly tags: readonly string[];
}
interface Row {
  readonly quantity: string;
  readonly lines: readonly Group[];
}

type Entry = CalculationLine & { readonly tag: string };

const each = (texts: readonly string[]): string => [...new Set(texts)].filter((t) => t !== '').join('; ');

/** Currents that are asked for or there: those of one result are one line, since their workings are a few words. */
const BY_RESULT: ReadonlySet<CalculationKind['as']> = new Set(['nominal']);

function grouped(as: CalculationKind['as'], entries: readonly Entry[]): Group[] {
  const groups = new Map<string, Entry[]>();
  for (const entry of entries) {
    const { working, result, against } = entry;
    const key = BY_RESULT.has(as) ? result : JSON.stringify([working, result, against]);
    groups.set(key, [...(groups.get(key) ?? []), entry]);
  }
  return [...groups.values()].map((of) => ({
    tags: [...new Set(of.map(({ tag }) => tag))],
    working: each(of.map(({ working }) => working)),
    result: of[0]?.result ?? '',
    against: each(of.map(({ against }) => against)),
  }));
}

function rowOf(plan: Plan, { quantity: name, underIec, codes, as }: CalculationKind): Row[] {
  const quantity = isNec(plan.basis) ? name : (underIec ?? name);
  const meant: ReadonlySet<string> = new Set(codes);
  const entries = plan.protectors.flatMap((protector) =>
    protector.calculations
      .filter(({ title, steps }) => !LIMITS.has(title.code) && meant.has(steps.at(-1)?.code ?? ''))
      .flatMap((calculation): Entry[] => {
        const line = calculationLine(as, protector, calculation, plan);
        return line === undefined ? [] : [{ tag: protector.tag, ...line }];
      }),
  );
  return entries.length === 0 ? [] : [{ quantity, lines: grouped(as, entries) }];
}

/** The lengths that were held against the critical one. */
function comparedLengths(plan: Plan): string {
  const lengths = plan.protectors.flatMap(({ tag, reasons }) =>
    reasons.flatMap(({ because }) => {
      if (because.code !== 'dc-input/length-compared') return [];
      const { length, shorter } = because.values;
      return [`${tag}: L ${paperLength(length.value, lengthUnitOf(plan))} ${shorter ? '<' : '≥'} Lcrit`];
    }),
  );
  return each(lengths);
}

/** `; 850: surroundings urban, stated`: the factor that decides, and who says so. */
function factorText({ facts }: Plan, steps: Calculation['steps']): string {
  const factor = steps.find((one) => one.code === 'exposure/surroundings');
  if (factor === undefined) return '';
  const how = facts.some(({ field }) => field === 'surroundings') ? 'stated' : 'assumed';
  return `; ${String(factor.value)}: surroundings ${factor.values.surroundings}, ${how}`;
}

/** Exposure to lightning: it decides under the IEC standards alone. */
function siteRows(plan: Plan): Row[] {
  if (isNec(plan.basis)) return [];
  return plan.siteCalculations.flatMap(({ steps }): Row[] => {
    const last = steps.at(-1);
    if (last === undefined) return [];
    const working = workingInShort(steps);
    const line = (result: string, against: string): Group => ({ tags: [], working, result, against });
    switch (last.code) {
      case 'exposure/risk-level': {
        const { limit } = last.values;
        const against = `${last.value < limit.value ? '<' : '≥'} ${String(limit.value)} (443.5)`;
        return [
          {
            quantity: 'Calculated risk level',
            lines: [
              {
                ...line(String(Math.round(last.value)), against),
                working: `${working}${factorText(plan, steps)}`,
              },
            ],
          },
        ];
      }
      case 'exposure/critical-length': {
        const result = paperLength(last.value, lengthUnitOf(plan));
        return [{ quantity: 'Critical length of DC runs', lines: [line(result, comparedLengths(plan))] }];
      }
      default:
        return [];
    }
  });
}

/** One row a kind of quantity: formula with figures, result, what it was checked against. */
export function calculationSummary(plan: Plan): CalculationSummaryView {
  const runs = runsOf(plan);
  const tagsText = (tags: readonly string[]): string => {
    if (tags.length === 0) return 'site';
    const isAll = tags.length === plan.protectors.length && tags.length > 1;
    return isAll ? 'all' : tagList([...tags].sort(byNaturalOrder));
  };
  const rows = [...CALCULATION_KINDS.flatMap((kind) => rowOf(plan, kind)), ...siteRows(plan)];
  return {
    title: 'Calculation summary',
    rows: rows.map(({ quantity, lines }) => ({
      quantity,
      name: wordRuns(quantity),
      lines: lines.map(({ tags, working, result, against }) => ({
        tags: runs(tagsText(tags)),
        working: runs(working),
        result,
        against: runs(against),
      })),
    })),
    none: 'Nothing to calculate: no protector is placed.',
  };
}
