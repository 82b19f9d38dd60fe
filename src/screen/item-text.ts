import type { Note, OpenItem } from '../model/open-item.js';
import { isUnsaid, told } from '../words/messages/told.js';
import { placeText } from '../words/origin.js';
import { printable } from './text-table.js';

/** Items of one kind that a screen shows for one column of a file before it counts the rest. */
export const MOST_OF_A_KIND = 5;

/**
 * A message without a place, for people: the problem, what was found and expected, what to do, its code.
 * @returns lines, each ended by a line feed
 */
export function noteText(note: Note): string {
  return `${printable(told(note).message)} [${note.code}]\n${detail(note)}`;
}

/**
 * A message with its place, for people.
 * @param more said after the place, e.g. the jobs that it runs through
 * @returns lines, each ended by a line feed
 */
export function itemText(item: OpenItem, more = ''): string {
  const place = printable(placeText(item));
  const lead = [item.severity, place, more].filter((s) => s !== '').join('  ');
  return `${lead}\n  ${printable(told(item).message)} [${item.code}]\n${detail(item)}`;
}

function detail(note: Note): string {
  const { found: was, expected: wanted, hint } = told(note);
  const found = isUnsaid(was) ? '' : `found ${JSON.stringify(printable(was, 80))}`;
  const expected = isUnsaid(wanted) ? '' : `expected ${printable(wanted)}`;
  const both = [found, expected].filter((s) => s !== '').join(', ');
  const facts = both === '' ? '' : `  ${both}\n`;
  return `${facts}  ${printable(hint)} (${note.who})\n`;
}
