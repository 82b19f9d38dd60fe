import { z } from 'zod';
import { isNec } from '../../../model/editions.js';
import { byNaturalOrder } from '../../../model/natural-order.js';
import type { Calculation, Plan, PlannedProtector } from '../../../model/plan.js';
import { levelHeld } from './code-figures.js';
import { figure } from '../../../words/figures.js';
import { drawnLength } from '../../../words/lengths.js';
import { workingInShort } from '../../../words/steps/in-short.js';
import { tagList } from '../../../words/tag-list.js';
import { CALCULATION_KINDS, type CalculationKind } from './calculation-kinds.js';
import { leadWorking } from './lead-working.js';
import { current, levelVolts, neededVolts } from './paper-figures.js';

export const CalculationSummarySchema = z.object({
  title: z.string(),
  rows: z.array(
    z.object({
      quantity: z.string(),
      lines: z.array(
        z.object({ tags: z.string(), working: z.string(), result: z.string(), against: z.string() }),
      ),
    }),
  ),
  none: z.string(),
});
export type CalculationSummaryView = z.infer<typeof CalculationSummarySchema>;

interface Line {
  readonly working: string;
  readonly result: string;
  readonly against: string;
}

type LastStep = Calculation['steps'][number];

/** Titles of figures that others are held against: they stand beside those, not by themselves. */
const LIMITS: ReadonlySet<string> = new Set(['calculation/converter-limit', 'calculation/code-limit']);

const against = (sign: boolean, limit: string): string => `${sign ? '≤' : '>'} ${limit}`;

/** A voltage against the part, the converter and the limit of the code. */
function voltageChecks(protector: PlannedProtector, value: number): string {
  const mcov = protector.figures?.mcov ?? null;
  const limits = protector.calculations.flatMap(({ title, steps }) => {
    const last = steps.at(-1);
    if (!LIMITS.has(title.code) || !last) return [];
    const whose = last.code === 'input-limit/converter' ? last.values.converter : '690.7';
    return [against(value <= last.value, `${figure(last.value, 'V')} ${whose}`)];
  });
  // A rating between the figure and its next volt meets it: the bare figure stands beside it.
  return [...(mcov === null ? [] : [against(value <= mcov, `${figure(mcov, 'V')} part`)]), ...limits].join(
    '; ',
  );
}

function currentCheck({ figures }: PlannedProtector, value: number): string {
  const sccr = figures?.sccr ?? null;
  return sccr === null ? '' : against(value <= sccr, `${current(sccr)} SCCR`);
}

function reachResult({ code, value }: LastStep, plan: Plan): string {
  if (code === 'reach/unlimited') return 'its whole run';
  return code === 'reach/none' ? 'none' : drawnLength(value, plan.basis);
}

function reachWorking(last: LastStep): string {
  switch (last.code) {
    case 'reach/unlimited': {
      const { level, leads, withstand } = last.values;
      return `${levelVolts(level.value)} V + ${levelVolts(leads.value)} V ≤ ${figure(withstand.value, 'V')} / 2`;
    }
    case 'reach/none': {
      const { level, leads, withstand } = last.values;
      return `${levelVolts(level.value)} V + ${levelVolts(leads.value)} V > ${figure(withstand.value, 'V')}`;
    }
    case 'reach/metres': {
      const { level, leads, withstand, slope } = last.values;
      return `(${figure(withstand.value, 'V')} − ${levelVolts(level.value)} V − ${levelVolts(leads.value)} V) / ${figure(slope.value, 'V/m')}`;
    }
    default:
      return '';
  }
}

/** One calculation of a protector, as a line of its kind. */
function lineOf(
  as: CalculationKind['as'],
  protector: PlannedProtector,
  { steps }: Calculation,
  plan: Plan,
): Line | undefined {
  const last = steps.at(-1);
  if (last === undefined) return undefined;
  const working = workingInShort(steps);
  const { figures } = protector;
  switch (as) {
    case 'voltage':
      return {
        working,
        result: `${neededVolts(last.value)} V`,
        against: voltageChecks(protector, last.value),
      };
    case 'current':
      return { working, result: current(last.value), against: currentCheck(protector, last.value) };
    case 'nominal': {
      const has = figures?.in ?? null;
      return {
        working,
        result: current(last.value),
        against: has === null ? '' : against(last.value <= has, `${current(has)} part`),
      };
    }
    case 'withstand':
      return {
        working,
        result: figure(last.value, 'V'),
        against: levelHeld(protector, 1),
      };
    case 'leads':
      return { working, result: `${levelVolts(last.value)} V`, against: 'added to the level' };
    case 'reach':
      return { working: reachWorking(last), result: reachResult(last, plan), against: 'the run' };
    case 'gauge':
      return leadWorking(protector, steps);
    case 'plain':
      return { working, result: figure(last.value, last.unit), against: '' };
  }
}

/** Lines that are alike but for their tags are one. */
function grouped(entries: readonly { readonly tag: string; readonly line: Line }[], all: number) {
  const groups = new Map<string, { line: Line; tags: string[] }>();
  for (const { tag, line } of entries) {
    const key = JSON.stringify(line);
    const group = groups.get(key);
    if (!group) groups.set(key, { line, tags: [tag] });
    else if (!group.tags.includes(tag)) group.tags.push(tag);
  }
  return [...groups.values()].map(({ line, tags }) => ({
    tags: tags.length === all && all > 1 ? 'all' : tagList([...tags].sort(byNaturalOrder)),
    ...line,
  }));
}

function rowOf(plan: Plan, kind: CalculationKind): CalculationSummaryView['rows'] {
  const codes: ReadonlySet<string> = new Set(kind.codes);
  const entries = plan.protectors.flatMap((protector) =>
    protector.calculations
      .filter(({ title, steps }) => !LIMITS.has(title.code) && codes.has(steps.at(-1)?.code ?? ''))
      .flatMap((calculation) => {
        const line = lineOf(kind.as, protector, calculation, plan);
        return line === undefined ? [] : [{ tag: protector.tag, line }];
      }),
  );
  if (entries.length === 0) return [];
  return [{ quantity: kind.quantity, lines: grouped(entries, plan.protectors.length) }];
}

/** Exposure to lightning: it decides under the IEC standards alone. */
function siteRows(plan: Plan): CalculationSummaryView['rows'] {
  if (isNec(plan.basis)) return [];
  return plan.siteCalculations.flatMap(({ steps }) => {
    const last = steps.at(-1);
    if (last?.code === 'exposure/risk-level') {
      const { limit } = last.values;
      const working = `CRL = ${workingInShort(steps)}`;
      const line = {
        tags: 'site',
        working,
        result: String(Math.round(last.value)),
        against: `${last.value < limit.value ? '<' : '≥'} ${String(limit.value)} (443.5)`,
      };
      return [{ quantity: 'Calculated risk level', lines: [line] }];
    }
    if (last?.code === 'exposure/critical-length') {
      const line = {
        tags: 'site',
        working: `Lcrit = ${workingInShort(steps)}`,
        result: figure(last.value, 'm'),
        against: comparedLengths(plan),
      };
      return [{ quantity: 'Critical length of DC runs', lines: [line] }];
    }
    return [];
  });
}

/** The lengths that were held against the critical one. */
function comparedLengths(plan: Plan): string {
  const lengths = plan.protectors.flatMap(({ tag, reasons }) =>
    reasons.flatMap(({ because }) =>
      because.code === 'dc-input/length-compared'
        ? [`${tag}: L ${drawnLength(because.values.length.value, plan.basis)}`]
        : [],
    ),
  );
  return [...new Set(lengths)].join('; ');
}

/** One row a kind of quantity: formula with figures, result, what it was checked against. */
export function calculationSummary(plan: Plan): CalculationSummaryView {
  return {
    title: 'Calculation summary',
    rows: [...CALCULATION_KINDS.flatMap((kind) => rowOf(plan, kind)), ...siteRows(plan)],
    none: 'Nothing to calculate: no protector is placed.',
  };
}
