import { z } from 'zod';
import type { Plan } from '../../../model/plan.js';

/** A text in pieces: what is whole may not be broken, as a tag or a figure with its unit. */
export const RunsSchema = z.array(z.object({ text: z.string(), whole: z.boolean() }));
export type Runs = z.infer<typeof RunsSchema>;

/** A tag that is longer may be broken, or it would push its table off the sheet. */
const LONGEST_TAG = 24;

const escaped = (tag: string): string => tag.replaceAll(/[\\^$.*+?()[\]{}|/]/g, '\\$&');

/** A figure with its unit, and the sign before it. */
const FIGURE =
  '(?:[≤≥<>] )?[-−+]?\\d[\\d.,/–]* (?:V/m|V|A|kA|in|ft|mm²|mm2|mm|m|µH|AWG(?: Cu| Al)?|%|°C|N m|lb-in)(?![\\w/°])';

/** Takes texts of a plan apart: its tags, and figures with their units, are whole. */
export function runsOf(plan: Plan): (text: string) => Runs {
  const known = [...plan.protectors.map((p) => p.tag), ...plan.site.equipments.map((e) => e.tag)];
  const tags = [...new Set(known)]
    .filter((tag) => tag.length <= LONGEST_TAG && /[^\w]/.test(tag))
    .sort((a, b) => b.length - a.length)
    .map(escaped);
  const named = tags.length === 0 ? '' : `(?<![\\w-])(?:${tags.join('|')})(?![\\w-])[,:;)]?|`;
  const whole = new RegExp(`(${named}${FIGURE})`, 'u');
  return (text) =>
    text
      .split(whole)
      .flatMap((piece, index) => (piece === '' ? [] : [{ text: piece, whole: index % 2 === 1 }]));
}
