import type { Sentence } from '../../model/sentence.js';
import type { Severity } from '../../model/words.js';
import { sharedBy, toldBy, type MessageEntry, type MessageTold } from '../message-kit.js';
import { ANSWER_WORDS } from './answers.js';
import { BATCH_WORDS, PACK_NOT_MADE } from './batch.js';
import { CHOOSE_WORDS } from './choose.js';
import { COMMAND_WORDS } from './command.js';
import { COMPANY_FILES_WORDS } from './company-files.js';
import { DOCUMENTS_WORDS } from './documents.js';
import { LIMIT_WORDS } from './limits.js';
import { LIST_FILE_WORDS } from './list-file.js';
import { LIST_HEADING_WORDS } from './list-heading.js';
import { LIST_WORDS } from './list.js';
import { MACHINE_WORDS } from './machine.js';
import { NETWORK_WORDS } from './network.js';
import { OUTPUT_WORDS } from './output.js';
import { PLACE_WORDS } from './place.js';
import { PRINT_WORDS } from './print.js';
import { FACT_WORDS, RATE_WORDS } from './rate.js';
import { RECORD_CHECK_WORDS } from './record-checks.js';
import { RECORD_WORDS } from './record.js';
import { REGISTER_WORDS } from './register.js';
import { ROW_WORDS } from './rows.js';
import { SITE_WORDS } from './site.js';
import { WORKBOOK_WORDS } from './workbook.js';

/** The whole catalogue of messages, with the file that each stands in. */
export const MESSAGE_CATALOGUE: readonly MessageEntry[] = [
  ...ANSWER_WORDS,
  ...BATCH_WORDS,
  ...CHOOSE_WORDS,
  ...COMMAND_WORDS,
  ...COMPANY_FILES_WORDS,
  ...DOCUMENTS_WORDS,
  ...LIMIT_WORDS,
  ...LIST_FILE_WORDS,
  ...LIST_HEADING_WORDS,
  ...LIST_WORDS,
  ...MACHINE_WORDS,
  ...NETWORK_WORDS,
  ...OUTPUT_WORDS,
  ...PLACE_WORDS,
  ...PRINT_WORDS,
  ...FACT_WORDS,
  ...RATE_WORDS,
  ...RECORD_WORDS,
  ...RECORD_CHECK_WORDS,
  ...REGISTER_WORDS,
  ...ROW_WORDS,
  ...SITE_WORDS,
  ...WORKBOOK_WORDS,
];

const BY_CODE: ReadonlyMap<string, MessageEntry> = new Map(
  MESSAGE_CATALOGUE.map((entry) => [entry.kind.code, entry]),
);

/** How grave a kind of item is; undefined where there is no such code. */
export function severityOf(code: string): Severity | undefined {
  return BY_CODE.get(code)?.kind.severity;
}

/** What is said of an item whose job failed, behind its own sentence. */
const hasNoPack = (values: object): boolean => 'packNotMade' in values && values.packNotMade === true;

/** A plan of an earlier shuntbook holds sentences only: they are handed on as they are. */
interface AsWritten {
  readonly asWritten: MessageTold;
}
const isAsWritten = (values: object): values is AsWritten => 'asWritten' in values;

/** True for what a message leaves unsaid: nothing was found, say. */
export function isUnsaid(sentence: Sentence): boolean {
  return sentence === '';
}

/**
 * What a message says to people, in English.
 * @param note its code, and what its sentences are made of
 * @throws Error where the catalogue has no such code
 */
export function told(note: { readonly code: string; readonly values: object }): MessageTold {
  if (isAsWritten(note.values)) return note.values.asWritten;
  const entry = BY_CODE.get(note.code);
  if (!entry) throw new Error(`no message has the code ${note.code}`);
  const said = toldBy(entry, note.values);
  return hasNoPack(note.values) ? { ...said, message: `${said.message} ${PACK_NOT_MADE}` as Sentence } : said;
}

/**
 * What a message says wherever in a batch it shows, and what it is about at its place.
 * @returns undefined where it is a matter of its one place
 */
export function sharedOf(note: {
  readonly code: string;
  readonly values: object;
}): ReturnType<typeof sharedBy> {
  const entry = BY_CODE.get(note.code);
  return entry && !isAsWritten(note.values) && !hasNoPack(note.values)
    ? sharedBy(entry, note.values)
    : undefined;
}
