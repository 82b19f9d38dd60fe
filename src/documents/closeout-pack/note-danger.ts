import { z } from 'zod';
import type { Plan, PlannedProtector } from '../../model/plan.js';
import { crewSay } from '../../words/crew-notes.js';
import { neededVolts } from '../../words/figures.js';
import type { CrewNoteWords } from '../../words/languages/crew-note-words.js';
import { unparted } from '../../words/unparted.js';
import { mayGas } from '../parts/cautions.js';
import { equipmentOf } from '../parts/site-index.js';
import type { Picture } from './note-kinds.js';

/** One line after ANSI Z535.6 on a page that is torn out and used alone, and the banners below it. */
export const NoteDangerSchema = z.object({
  word: z.string(),
  style: z.enum(['danger', 'warning']),
  /** With the highest voltage of the plan there. */
  says: z.string(),
  banners: z.array(z.object({ word: z.string(), says: z.string() })),
});
export type NoteDanger = z.infer<typeof NoteDangerSchema>;

/** The highest voltages that may stand there: `264 V AC and 462 V DC`. */
function highest({ wiring: { measuring } }: PlannedProtector, words: CrewNoteWords): string {
  const { meter } = measuring;
  const unknown = (current: 'ac' | 'dc' | null): string =>
    words.notKnownVolts(current === null ? '' : words.systems[current]);
  if (meter?.says.code !== 'meter/rated') return unknown(null);
  const { beside, volts, current } = meter.says.values;
  return [{ volts, current }, ...(beside ?? [])]
    .map((one) => {
      if (one.volts === null) return unknown(one.current);
      const kind = one.current === null ? '' : ` ${words.systems[one.current]}`;
      return unparted(`${String(neededVolts(one.volts.value))} V${kind}`);
    })
    .join(` ${words.and} `);
}

/** What a wiring note warns of before its first step: what stays live here, sources that nobody knows, a battery's gas. */
export function noteDanger(plan: Plan, picture: Picture, words: CrewNoteWords): NoteDanger {
  const [first] = picture;
  const { wiring, ports } = first;
  const { isolation, hazard, measuring, fedFromTwoSupplies } = wiring;
  const gathers = ports.some(({ equipment }) => mayGas(equipmentOf(plan, equipment)));
  const gas = wiring.notes.find(({ code }) => code === 'overcurrent-note/battery-gas');
  const gasTexts = gas ? [crewSay(gas, words.language)] : gathers ? [words.gas] : [];
  const { state } = measuring;
  const plain = (says: string): NoteDanger['banners'][number] => ({ word: '', says });
  return {
    word: hazard === 'shock' ? words.words.danger : words.words.warning,
    style: hazard === 'shock' ? 'danger' : 'warning',
    says: words.hazards[hazard](highest(first, words)),
    banners: [
      ...(state?.code === 'measure-state/do-not-open' ? [plain(crewSay(state, words.language))] : []),
      ...(isolation.unknown || isolation.part === null ? [plain(words.sourcesUnknown)] : []),
      ...isolation.live.map(({ what, who }) => ({
        word: words.words.staysLive,
        says: `${crewSay(what, words.language)}; ${crewSay(who, words.language)}.`,
      })),
      ...(fedFromTwoSupplies ? [plain(words.twoSupplies)] : []),
      ...gasTexts.map(plain),
    ],
  };
}
