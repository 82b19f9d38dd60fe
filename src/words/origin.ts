import type { Origin, Place, Signed } from '../model/fact.js';

/**
 * A place in a file, the same wherever it is told: `jobs.csv, line 12, voc_stc`, as far as it is known.
 * @returns `` where it is in no file
 */
export function placeText({ file, line, column }: Place): string {
  if (file === '') return '';
  return [
    file === '-' ? 'standard input' : file,
    ...(line > 0 ? [`line ${line}`] : []),
    ...(column === '' ? [] : [column]),
  ].join(', ');
}

/** `answered by R. Example on 2026-02-03`: whoever reads it can ask who answered, and when. */
export function answeredBy({ by, date }: Signed): string {
  return signed(by === '' ? 'answered, by whom isn’t said' : `answered by ${by}`, date);
}

const signed = (what: string, date: string): string => (date === '' ? what : `${what} on ${date}`);

/** Where a value comes from, as documents and `why` print it: `jobs.csv, line 12, voc_stc`. */
export function cited(origin: Origin): string {
  switch (origin.from) {
    case 'list':
      return placeText(origin);
    case 'library':
      return `equipment library ${placeText(origin)}`;
    case 'catalogue':
      return `catalogue ${placeText(origin)}`;
    case 'job-facts':
      return `job facts ${placeText(origin)}`;
    case 'equipment-facts':
      return `equipment facts ${placeText(origin)}`;
    case 'answer':
      return `${answeredBy(origin)} (${placeText(origin)})`;
    case 'setting':
      return `setting ${origin.name}`;
    case 'default':
      return `default of ${origin.field}`;
    case 'rule':
      return origin.id;
    case 'published':
      return origin.source;
  }
}

/**
 * The three words that paper has for where a fact comes from.
 * @returns `stated` by whoever wrote the list or the job, `looked up` in a library, a catalogue, the company's settings or a
 * publication, `assumed` where nobody said it
 */
export function knownHow({ from }: Origin): 'stated' | 'assumed' | 'looked up' {
  switch (from) {
    case 'list':
    case 'job-facts':
    case 'equipment-facts':
    case 'answer':
      return 'stated';
    case 'default':
    case 'rule':
      return 'assumed';
    case 'library':
    case 'catalogue':
    case 'setting':
    case 'published':
      return 'looked up';
  }
}
