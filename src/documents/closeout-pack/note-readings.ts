import { z } from 'zod';
import { reasonKey } from '../../model/reason.js';
import type { PlannedProtector } from '../../model/plan.js';
import type { PlannedBand, Probes } from '../../model/planned-measuring.js';
import { crewSay } from '../../words/crew-notes.js';
import type { CrewNoteWords } from '../../words/languages/crew-note-words.js';
import { figure } from '../../words/figures.js';
import { unparted } from '../../words/unparted.js';
import type { NoteKind, Picture } from './note-kinds.js';
import { portName, tagsName } from './note-names.js';

export const NoteReadingSchema = z.object({
  /** Those that it is of; `` where it is of all on the page. */
  tags: z.string(),
  /** `L1, L2 to ground, on the utility`. */
  what: z.string(),
  expect: z.string(),
  stop: z.string(),
  /** The points of the probes, one for each box of volts found. */
  probes: z.array(
    z.object({
      /** Before its box; `` where the line has one box. */
      label: z.string(),
      /** Over its column: `L1 to ground`. */
      full: z.string(),
      /** What the record holds; ``: a box. */
      found: z.string(),
    }),
  ),
});
export type NoteReading = z.infer<typeof NoteReadingSchema>;

/** The bands of the housings of one place, each once: those of two housings share pole to pole and line to line. */
export function bandsOf(picture: Picture): PlannedBand[] {
  const found = new Map<string, PlannedBand>();
  for (const { wiring } of picture) {
    if (wiring.measuring.state?.code === 'measure-state/do-not-open') continue;
    for (const band of wiring.measuring.bands) {
      const { between, ...rest } = band;
      const isToGround = between.every(({ to }) => to === null);
      const key = JSON.stringify([isToGround, rest]);
      const there = found.get(key);
      const all = [...(there?.between ?? []), ...between];
      const once = new Map(all.map((probes) => [JSON.stringify(probes), probes]));
      found.set(key, { ...band, between: [...once.values()] });
    }
  }
  return [...found.values()];
}

/** `+`, `−`, `L1`; with the port before it on a housing of several. */
function point(wire: Probes['wire'], words: CrewNoteWords): string {
  const short = wire.name === 'positive' ? '+' : wire.name === 'negative' ? '−' : wire.name;
  return wire.port === null ? short : `${portName(wire.port, words)} ${short}`;
}

/** Volts as a limit that is kept: never wider than the plan's, to a tenth. */
const kept = (value: number, round: 'up' | 'down'): string =>
  figure((round === 'up' ? Math.ceil(value * 10 - 1e-6) : Math.floor(value * 10 + 1e-6)) / 10, '');

/** The sign that all probes of a band share; `` where it tells nothing. */
function signOf({ between }: PlannedBand): string {
  const [sign, ...others] = new Set(between.map((probes) => probes.sign));
  if (others.length > 0 || sign === null || sign === undefined) return '';
  return sign === '-' ? '−' : '+';
}

function figuresOf(band: PlannedBand, words: CrewNoteWords): Pick<NoteReading, 'expect' | 'stop'> {
  const { low, high, current, due } = band;
  const { table, systems } = words;
  if (high === null) return { expect: table.notKnown, stop: '' };
  const sign = signOf(band);
  const signed = (text: string): string => (text === '0' ? text : `${sign}${text}`);
  const volts = (text: string): string => unparted(`${text} V`);
  const top = kept(high, 'down');
  const kind = current === null ? '' : ` ${systems[current]}`;
  const most = unparted(`${signed(top)} V${kind}`);
  // Poles that are swapped stop too: the limits themselves are told without a sign, since 50 under 0 is no lower than 40.
  const stopAt = (limits: string): string => (sign === '' ? limits : table.orOtherSign(limits));
  const over = stopAt(table.over(volts(top)));
  if (low === null) return { expect: table.upTo(most), stop: over };
  const bottom = kept(low, 'up');
  const expect = table.between(signed(bottom), most);
  // What is written down and measured again later stops nobody.
  return low <= 0 || due !== null
    ? { expect, stop: over }
    : { expect, stop: stopAt(table.underOrOver(volts(bottom), volts(top))) };
}

function whatOf(band: PlannedBand, isMixed: boolean, words: CrewNoteWords): string {
  const { between, reads } = band;
  const { table } = words;
  const toGround = between.every(({ to }) => to === null);
  const each = between.map(({ wire, to }) =>
    to === null ? point(wire, words) : table.fromTo(point(wire, words), point(to, words)),
  );
  const points = toGround ? table.toGround(each.join(', ')) : each.join(', ');
  const more =
    reads.code === 'reading/supply' || reads.code === 'reading/either-leg'
      ? [
          ...(isMixed && reads.values.supply !== 'any'
            ? [reads.values.supply === 'utility' ? table.onUtility : table.onOwn]
            : []),
          ...(reads.code === 'reading/either-leg' ? [table.ifHighLeg] : []),
        ]
      : [];
  return [points, ...more].join(', ');
}

/** True where some readings are taken on the utility and some on a source of the site's own. */
function isOnBoth(bands: readonly PlannedBand[]): boolean {
  const supplies = new Set(
    bands.flatMap(({ reads }) => (reads.code === 'reading/supply' ? [reads.values.supply] : [])),
  );
  return supplies.size > 1;
}

function probesOf(
  { between }: PlannedBand,
  words: CrewNoteWords,
  found: (probes: Probes) => string,
): NoteReading['probes'] {
  const { table } = words;
  return between.map((probes) => {
    const { wire, to } = probes;
    const from = point(wire, words);
    const full = to === null ? table.toGround(from) : table.fromTo(from, point(to, words));
    const both = to === null ? from : `${from}–${point(to, words)}`;
    return { label: between.length === 1 ? '' : both, full, found: found(probes) };
  });
}

const tagsOf = (pictures: readonly Picture[]): string[] =>
  pictures.flatMap((picture) => picture.map(({ tag }) => tag));

/**
 * What is measured at the places of a page before anything is connected; places with the same figures share the lines.
 * @param found what the record holds of a housing between two points; `` nothing
 * @returns none where nothing may be opened
 */
export function noteReadings(
  page: NoteKind,
  words: CrewNoteWords,
  found: (tag: string, probes: Probes) => string = () => '',
): NoteReading[] {
  const groups = new Map<string, Picture[]>();
  for (const picture of page) {
    const key = JSON.stringify(bandsOf(picture).map(({ low, high }) => [low, high]));
    groups.set(key, [...(groups.get(key) ?? []), picture]);
  }
  return [...groups.values()].flatMap((pictures) => {
    const [first] = pictures;
    if (first === undefined) return [];
    const bands = bandsOf(first);
    return bands.map((band) => ({
      tags: groups.size > 1 ? tagsName(tagsOf(pictures), words) : '',
      what: whatOf(band, isOnBoth(bands), words),
      ...figuresOf(band, words),
      probes: probesOf(band, words, (probes) => found(first[0].tag, probes)),
    }));
  });
}

/** How a ground fault shows, and when a reading is due again, each once. */
export function watchTexts(page: NoteKind, { language }: CrewNoteWords): string[] {
  const found = new Map<string, string>();
  for (const picture of page) {
    for (const { fault, due } of bandsOf(picture)) {
      for (const one of [fault, due]) if (one !== null) found.set(reasonKey(one), crewSay(one, language));
    }
  }
  return [...found.values()];
}

/** What readings outside their figures may mean, each once for the whole job. */
export function outsideMeanings(
  protectors: readonly PlannedProtector[],
  { language }: CrewNoteWords,
): string[] {
  const found = new Map<string, string>();
  for (const { wiring } of protectors) {
    for (const { below, above } of wiring.measuring.bands) {
      for (const one of [below, above]) if (one !== null) found.set(reasonKey(one), crewSay(one, language));
    }
  }
  return [...found.values()];
}
