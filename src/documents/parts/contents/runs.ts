import { z } from 'zod';
import type { Plan } from '../../../model/plan.js';

/** A text in pieces: what is whole may not be broken, as a tag or a figure with its unit. */
export const RunsSchema = z.array(z.object({ text: z.string(), whole: z.boolean() }));
export type Runs = z.infer<typeof RunsSchema>;

/** A name that is longer may be broken, or it would push its table off the sheet. */
const LONGEST = 24;

const escaped = (tag: string): string => tag.replaceAll(/[\\^$.*+?()[\]{}|/]/g, '\\$&');

/** A figure with its unit, and the sign before it. */
const FIGURE =
  '(?:[≤≥<>–−] )?[-−+]?\\d[\\d.,/–]* (?:V/m|V/ft|V|A/µs|A|kA|in|ft|mm²|mm2|mm|m|µH|µs|AWG(?: Cu| Al)?|%|°C|N m|lb-in)(?![\\w/°])';

/** A kind of protector with its number: `type 2`, `type T2`. */
const TYPE = '\\btype T?\\d\\b';

/** A clause with its letters in brackets: `690.7(A)(1)`. */
const CLAUSE = '\\d{3}\\.\\d+(?:\\([A-Za-z0-9]+\\))+[a-z]?';

/** A word with a hyphen in it, as `sub-panel`: no line ends within. One of many or long pieces may be broken. */
const HYPHENED = '(?<![\\p{L}\\d-])\\p{L}[\\p{L}\\d]{0,13}(?:-[\\p{L}\\d]{1,14}){1,2}(?![\\p{L}\\d-])';
const HYPHENED_WORDS = new RegExp(`(${HYPHENED})`, 'u');

const inPieces = (text: string, whole: RegExp): Runs =>
  text
    .split(whole)
    .flatMap((piece, index) => (piece === '' ? [] : [{ text: piece, whole: index % 2 === 1 }]));

/** A name or title of nobody’s plan: words with a hyphen are whole. */
export function wordRuns(text: string): Runs {
  return inPieces(text, HYPHENED_WORDS);
}

/** A standard with its part: `IEC 60364-7-712`. */
const STANDARD = '\\bIEC \\d{5}(?:-\\d+)+';

/** Takes texts of a plan apart: its tags, parts and files, figures with their units, clauses and words with a hyphen are whole. */
export function runsOf(plan: Plan): (text: string) => Runs {
  const known = [
    ...plan.protectors.flatMap((p) => [p.tag, p.part ?? '', p.partDetails?.listingFile ?? '']),
    ...plan.site.equipments.map((e) => e.tag),
  ];
  const tags = [...new Set(known)]
    .filter((tag) => tag.length <= LONGEST && /[^\w]/.test(tag))
    .sort((a, b) => b.length - a.length)
    .map(escaped);
  const named = tags.length === 0 ? '' : `(?<![\\w-])(?:${tags.join('|')})(?![\\w-])[,:;)]?|`;
  const whole = new RegExp(`(${named}${FIGURE}|${CLAUSE}|${TYPE}|${STANDARD}|${HYPHENED})`, 'u');
  return (text) => inPieces(text, whole);
}
