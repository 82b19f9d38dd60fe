import { z } from 'zod';
import { byNaturalOrder } from '../../model/natural-order.js';
import type { IsolationPart, IsolationStep } from '../../model/planned-isolation.js';
import type { Plan } from '../../model/plan.js';
import { crewNoteWords, crewSay } from '../../words/crew-notes.js';
import type { CrewNoteWords } from '../../words/languages/crew-note-words.js';
import type { CrewLanguage } from '../../words/crew-language.js';
import { equipmentOf } from '../parts/site-index.js';
import { asPrinted, printedNumbers } from './isolation-steps.js';
import { outsideMeanings } from './note-readings.js';
import { tagsName } from './note-names.js';

/** What is done at one place; the number and the deed stand in the first row of theirs, over the rows below. */
const RowSchema = z.object({
  number: z.string(),
  /** Rows of the step; 0 in its further rows. */
  steps: z.number().int(),
  does: z.string(),
  /** Rows of the deed; 0 in its further rows. */
  places: z.number().int(),
  where: z.string(),
});

export const IsolationViewSchema = z.object({
  heading: z.string(),
  word: z.string(),
  danger: z.string(),
  heads: z.object({
    dead: z.string(),
    back: z.string(),
    step: z.string(),
    undoes: z.string(),
    does: z.string(),
    where: z.string(),
    lock: z.string(),
    by: z.string(),
    time: z.string(),
    testedDead: z.string(),
  }),
  parts: z.array(
    z.object({
      /** `` where the site is one part. */
      heading: z.string(),
      /** `` where every source is on the list. */
      unknown: z.string(),
      unknownWhat: z.string(),
      steps: z.array(RowSchema),
      back: z.array(RowSchema),
    }),
  ),
  /** `` where nothing stays live. */
  liveHeading: z.string(),
  /** What stays live with every step done. */
  live: z.array(z.string()),
  outsideHeading: z.string(),
  /** What readings outside their figures may mean. */
  outside: z.array(z.string()),
});
export type IsolationView = z.infer<typeof IsolationViewSchema>;
type Row = z.infer<typeof RowSchema>;

/** What no device is opened for, and so no lock is asked of each. */
const WITHOUT_A_DEVICE: ReadonlySet<string> = new Set(['isolate/wait', 'isolate/keep-diversion']);

/** A device with its place: `CC-1 · Plant room`. */
function device(plan: Plan, tag: string): string {
  const place = equipmentOf(plan, tag)?.place ?? '';
  return place === '' ? tag : `${tag} · ${place}`;
}

/** Devices by the place that they are at: `CC-1 to CC-5 · Plant room`. */
function places(plan: Plan, tags: readonly string[], words: CrewNoteWords): string[] {
  if (tags.length === 0) return [''];
  const byPlace = new Map<string, string[]>();
  for (const tag of tags) {
    const place = equipmentOf(plan, tag)?.place ?? '';
    const there = byPlace.get(place);
    if (there) there.push(tag);
    else byPlace.set(place, [tag]);
  }
  return [...byPlace].map(
    ([place, there]) => `${tagsName(there, words)}${place === '' ? '' : ` · ${place}`}`,
  );
}

/**
 * The rows of a log.
 * @param isEach true: a row for each device that is opened, since each has a lock of its own; else a row for each place
 */
function rowsOf(
  plan: Plan,
  part: IsolationPart,
  steps: readonly IsolationStep[],
  isEach: boolean,
  words: CrewNoteWords,
): Row[] {
  const printed = printedNumbers(part);
  return steps.flatMap(({ number, acts }) => {
    const rows = acts.flatMap(({ does, tags }) => {
      const isOpened = isEach && tags.length > 0 && !WITHOUT_A_DEVICE.has(does.code);
      const at = isOpened
        ? [...tags].sort(byNaturalOrder).map((tag) => device(plan, tag))
        : places(plan, tags, words);
      const said = crewSay(asPrinted(does, printed), words.language);
      return at.map((where, index) => ({
        does: index === 0 ? said : '',
        places: index === 0 ? at.length : 0,
        where,
      }));
    });
    const name = String(printed.get(number) ?? '');
    return rows.map((row, index) => ({
      number: index === 0 ? name : '',
      steps: index === 0 ? rows.length : 0,
      ...row,
    }));
  });
}

/** What stays live with every step done, each once with the protectors that it is told at. */
function staysLive(plan: Plan, words: CrewNoteWords): string[] {
  const told = new Map<string, string[]>();
  for (const { tag, wiring } of plan.protectors)
    for (const { what, who } of wiring.isolation.live) {
      const says = `${crewSay(what, words.language)}; ${crewSay(who, words.language)}`;
      told.set(says, [...(told.get(says) ?? []), tag]);
    }
  return [...told].map(([says, tags]) => `${tagsName(tags, words)}: ${says}.`);
}

/** Lines of a log in which the crew writes down what it finds; common practice, no source. */
const LINES = 10;

/** A log to fill in, where the list joins the protectors to nothing that could be opened. */
function blankPart(words: CrewNoteWords): IsolationView['parts'][number] {
  const steps = Array.from({ length: LINES }, (_, index) => ({
    number: String(index + 1),
    steps: 1,
    does: '',
    places: 1,
    where: '',
  }));
  const { sourcesUnknown: unknown, isolation } = words;
  return { heading: '', unknown, unknownWhat: isolation.findOrder, steps, back: [] };
}

/**
 * How each part of the site is made dead, place by place, with a log beside it, and live again.
 * @param language of the crew
 */
export function isolationView(plan: Plan, language: CrewLanguage): IsolationView {
  const words = crewNoteWords(language);
  const { parts } = plan.isolation;
  const { heading, partHeading, danger, outsideHeading, dead, back, step, does, where } = words.isolation;
  const { lock, by, time, testedDead, undoes, unknown } = words.isolation;
  const outside = outsideMeanings(plan.protectors, words);
  const live = staysLive(plan, words);
  return {
    heading,
    word: words.words.danger,
    danger,
    heads: { dead, back, step, undoes, does, where, lock, by, time, testedDead },
    parts:
      parts.length === 0
        ? [blankPart(words)]
        : parts.map((part) => ({
            heading: parts.length === 1 ? '' : partHeading(String(part.number)),
            unknown: part.unknown.length === 0 ? '' : words.sourcesUnknown,
            unknownWhat: part.unknown.length === 0 ? '' : unknown(tagsName(part.unknown, words)),
            steps: rowsOf(plan, part, part.steps, true, words),
            back: rowsOf(plan, part, part.back, false, words),
          })),
    liveHeading: live.length === 0 ? '' : words.words.staysLive,
    live,
    outsideHeading: outside.length === 0 ? '' : outsideHeading,
    outside,
  };
}
