import type { Origin, Place } from '../model/fact.js';

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
