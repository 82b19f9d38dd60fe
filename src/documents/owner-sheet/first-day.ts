import { filled } from '../../words/languages.js';
import type { OwnerStrings } from '../../words/languages/owner-strings.js';
import type { AsBuilt } from '../parts/as-built.js';
import type { Runs } from '../parts/contents/runs.js';

/** A sentence of the lights that were seen otherwise than they are drawn; none where all look as they should. */
export function seenElse(tag: string, built: AsBuilt | undefined, strings: OwnerStrings): string[] {
  const odd = (built?.looks ?? []).filter((one) => one.tag === tag && !one.asPlanned);
  if (odd.length === 0) return [];
  const told = odd.map(({ channel, look }) =>
    filled(strings.lightAlt, {
      number: channel,
      look: strings.looks[look].toLocaleLowerCase(strings.language),
    }),
  );
  return [filled(strings.boxes.seenElse, { lights: [...new Set(told)].join(', ') })];
}

/** What the sheet says of the work itself. */
export interface Told {
  /** Before a blank for the day on which they were fitted; `` where it is known. */
  readonly blank: string;
  readonly sentences: readonly string[];
}

/** When the protectors were fitted, when the company looks again, and whether the sheet shows what is planned or what is there. */
export function workTold(built: AsBuilt | undefined, strings: OwnerStrings): Told {
  if (built === undefined) return { blank: strings.fitted, sentences: [strings.made.planned] };
  const housings = [...built.housings.values()];
  const days = (of: 'fittedOn' | 'nextCheck'): string[] =>
    [...new Set(housings.map((one) => one[of]).filter((day) => day !== ''))].sort();
  const fitted = days('fittedOn');
  const [next] = days('nextCheck');
  return {
    blank: fitted.length === 0 ? strings.fitted : '',
    sentences: [
      ...(fitted.length === 0 ? [] : [filled(strings.fittedOn, { dates: fitted.join(', ') })]),
      ...(next === undefined ? [] : [filled(strings.nextLook, { date: next })]),
      strings.made[built.made === 'deviating' ? 'built' : built.made],
    ],
  };
}

/** A sentence in which no line's end parts a date. */
export function datesWhole(text: string): Runs {
  return text
    .split(/(\d{4}-\d{2}-\d{2}[.,]?)/)
    .flatMap((piece, index) => (piece === '' ? [] : [{ text: piece, whole: index % 2 === 1 }]));
}
