import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import { current, figure, levelVolts } from '../../words/figures.js';
import type { AsBuiltWords } from '../../words/languages/as-built-words.js';
import { lengthUnitOf, paperLead, paperLength, type LengthUnit } from '../../words/lengths.js';
import { unparted } from '../../words/unparted.js';
import type { BuiltValue, Change } from './as-built.js';

/** Heads of the columns of what is otherwise than planned. */
export const ChangeColumnsSchema = z.object({
  tag: z.string(),
  what: z.string(),
  planned: z.string(),
  found: z.string(),
  result: z.string(),
});

/** What is otherwise than planned, in words; rows that differ in nothing but the tag are one. */
export const ChangeRowSchema = z.object({
  tags: z.array(z.string()).describe('None: the whole job'),
  what: z.string(),
  planned: z.string(),
  found: z.string(),
  result: z.string().describe('What it was held against, and whether it holds; empty: against nothing'),
  fails: z.boolean(),
  accepted: z.string().describe('By whom and when; empty: nothing is to be accepted'),
});
export type ChangeRow = z.infer<typeof ChangeRowSchema>;

function valueText(value: BuiltValue, unit: LengthUnit, { changed, looks }: AsBuiltWords): string {
  switch (value.is) {
    case 'nothing':
      return '';
    case 'text':
      return value.text;
    case 'look':
      return looks[value.look];
    case 'outcome':
      return changed.outcomes[value.outcome];
    case 'band': {
      const { low, high } = value;
      if (high === null) return changed.unknown;
      return low === null ? `≤ ${figure(high, 'V')}` : changed.band(figure(low, ''), figure(high, 'V'));
    }
    case 'reach':
      if (value.value === null) return changed.reach.whole;
      return value.value === 0 ? changed.reach.none : paperLength(value.value, unit, 'down');
    default:
      return value.value === null ? changed.unknown : FIGURES[value.is](value.value, unit);
  }
}

const FIGURES = {
  lead: (metres: number, unit: LengthUnit) => paperLead(metres, unit),
  limit: (metres: number, unit: LengthUnit) => `≤ ${paperLead(metres, unit, 'down')}`,
  volts: (volts: number) => figure(volts, 'V'),
  level: (volts: number) => figure(levelVolts(volts), 'V'),
  most: (volts: number) => `≤ ${figure(volts, 'V')}`,
  amperes: (amperes: number) => current(amperes),
  rated: (amperes: number) => `≤ ${current(amperes)}`,
} as const;

function acceptedText({ accepted, result }: Change, { changed }: AsBuiltWords): string {
  if (accepted === null) return result === 'fails' ? changed.notAccepted : '';
  const { by, date, reason, paper } = accepted;
  const more = [reason, paper === '' ? '' : changed.paper(paper)].filter((text) => text !== '');
  return [changed.accepted(by, date), ...more].join('; ');
}

/**
 * What is otherwise than planned, in a language, each kind of change once.
 * @param plan whose lengths' unit counts
 * @param atText names between what volts were found
 */
export function changeRows(
  plan: Pick<Plan, 'site' | 'basis'>,
  changes: readonly Change[],
  words: AsBuiltWords,
  atText: (at: NonNullable<Change['at']>) => string = () => '',
): ChangeRow[] {
  const unit = lengthUnitOf(plan);
  const { changed } = words;
  const rows = new Map<string, ChangeRow>();
  for (const change of changes) {
    const text = (value: BuiltValue): string => unparted(valueText(value, unit, words));
    const held = change.result === 'none' ? '' : changed[change.result];
    const against = text(change.against);
    const row = {
      what: [changed.what[change.what], change.of, change.at === null ? '' : atText(change.at)]
        .filter((one) => one !== '')
        .join(' '),
      planned: text(change.planned),
      found: text(change.found),
      result: [against, held].filter((one) => one !== '').join(': '),
      fails: change.result === 'fails',
      accepted: acceptedText(change, words),
    };
    const key = JSON.stringify(row);
    const known = rows.get(key)?.tags ?? [];
    rows.set(key, { tags: change.tag === '' ? known : [...known, change.tag], ...row });
  }
  return [...rows.values()];
}
