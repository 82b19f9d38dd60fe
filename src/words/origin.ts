import type { Origin } from '../model/fact.js';

/** Where a value comes from, as documents and `why` print it: `jobs.csv, line 12, voc_stc`. */
export function cited(origin: Origin): string {
  switch (origin.from) {
    case 'list':
      return place(origin.file, origin.line, origin.column);
    case 'library':
      return `equipment library ${place(origin.file, origin.line, origin.column)}`;
    case 'catalogue':
      return `catalogue ${place(origin.file, origin.line, origin.column)}`;
    case 'job-facts':
      return `job facts ${place(origin.file, origin.line, origin.column)}`;
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

function place(file: string, line: number, column: string): string {
  return `${file}, line ${line}${column === '' ? '' : `, ${column}`}`;
}
