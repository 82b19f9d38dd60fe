import { isNec } from '../../../model/editions.js';
import type { Calculation, Plan, PlannedProtector } from '../../../model/plan.js';
import { figure } from '../../../words/figures.js';
import { leadAsPlanned } from './lead-line.js';
import { lengthUnitOf, reachWords } from '../../../words/lengths.js';
import { workingInShort } from '../../../words/steps/in-short.js';
import { leadVolts } from './operand.js';
import { reachLine } from './reach-line.js';
import type { CalculationKind } from './calculation-kinds.js';
import { levelHeld } from './code-figures.js';
import { askedCurrent, askedVolts, givenCurrent, levelText } from './paper-figures.js';

/** One calculation in the summary. */
export interface CalculationLine {
  readonly working: string;
  readonly result: string;
  readonly against: string;
}

type LastStep = Calculation['steps'][number];

/** Titles of figures that others are held against: they stand beside those, not by themselves. */
export const LIMITS: ReadonlySet<string> = new Set(['calculation/converter-limit', 'calculation/code-limit']);

const against = (isMet: boolean, limit: string): string => `${isMet ? '≤' : '>'} ${limit}`;

/** A voltage against the part, the converter and the limit of the code. */
function voltageChecks(protector: PlannedProtector, { value, code }: LastStep): string[] {
  const mcov = protector.figures?.mcov ?? null;
  const part = mcov === null ? [] : [against(value <= mcov, `${figure(mcov, 'V')} part`)];
  if (!code.startsWith('cold-voltage/') && !code.startsWith('array-voltage/')) return part;
  const limits = protector.calculations.flatMap(({ title, steps }) => {
    const last = steps.at(-1);
    if (!LIMITS.has(title.code) || !last) return [];
    const whose = last.code === 'input-limit/converter' ? 'converter' : '690.7';
    return [against(value <= last.value, `${figure(last.value, 'V')} ${whose}`)];
  });
  return [...part, ...limits];
}

const isPart = (has: number | null | undefined): has is number => has !== null && has !== undefined;

/** Level and leads against what is fed from here, which a service or panel reckons its reach with. */
function fedText({ figures }: PlannedProtector): string {
  const fed = figures?.reachWithstand ?? null;
  return fed === null || fed === figures?.impulseWithstand ? '' : `fed: ${String(fed)} V (assumed)`;
}

/**
 * One calculation of a protector as a line of its kind.
 * @returns undefined where it has no result
 */
export function calculationLine(
  as: CalculationKind['as'],
  protector: PlannedProtector,
  { steps }: Calculation,
  plan: Plan,
): CalculationLine | undefined {
  const last = steps.at(-1);
  if (last === undefined) return undefined;
  const working = workingInShort(steps);
  const { figures, required } = protector;
  switch (as) {
    case 'voltage': {
      const result = `${askedVolts(last.value, figures?.mcov)} V`;
      return { working, result, against: voltageChecks(protector, last).join('; ') };
    }
    case 'current': {
      const sccr = figures?.sccr;
      const open = required.backfeedUnknown;
      const isAll = required.sccr !== null;
      const more = isAll ? '' : '; what isn’t known adds to it';
      const rest = `${open.length === 0 ? '' : '; the converter adds what it sends back'}${more}`;
      const check =
        isAll && isPart(sccr)
          ? against(last.value <= sccr, `${givenCurrent(sccr)} ${isNec(plan.basis) ? 'SCCR' : 'ISCCR'}`)
          : '';
      return { working: `${working}${rest}`, result: askedCurrent(last.value, sccr), against: check };
    }
    case 'nominal': {
      const has = figures?.in;
      const check = isPart(has) ? against(last.value <= has, `${givenCurrent(has)} part`) : '';
      const by = last.sure === 'common practice' ? ', common practice' : '';
      return { working: `${working}${by}`, result: askedCurrent(last.value, has), against: check };
    }
    case 'leads': {
      const exact = leadVolts(last.value);
      const result = levelText(last.value);
      const rounded = exact === result ? '' : `rounded up to 10 V, ${exact} V in the level below; `;
      return {
        working: `${working} = ${exact} V`,
        result: `${result} V`,
        against: `${rounded}${leadAsPlanned(protector, plan)}`,
      };
    }
    case 'reach': {
      const result = reachWords(figures, lengthUnitOf(plan));
      const { working: how, leads } = reachLine(last, figures, lengthUnitOf(plan));
      return {
        working: how,
        result,
        against: [levelHeld(protector, 1, leads), fedText(protector)].filter((one) => one !== '').join('; '),
      };
    }
  }
}
