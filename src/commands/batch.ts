import { itemInEnglish } from '../words/english-beside.js';
import type { JobItem } from '../index.js';
import type { BatchOptions, BatchResult, ExitStatus, OpenItem, Progress } from '../index.js';
import { note } from '../model/message.js';
import { COMMAND_MESSAGES } from '../model/messages/command.js';
import { gapsText } from '../screen/gaps.js';
import { APPENDIX_NAMES, appendixOf } from '../words/appendices.js';
import { CREW_LANGUAGES, isCrewLanguage } from '../words/crew-language.js';
import { isOwnerLanguage, OWNER_LANGUAGE_CODES } from '../words/languages.js';
import { progressBar, progressLine } from '../screen/progress.js';
import { counted, printable } from '../screen/text-table.js';
import { itemText, noteText } from '../screen/item-text.js';
import { batchTable, draftsText, itemsText } from '../screen/tell.js';
import type { CommonOptions, Context } from './context.js';
import { dateOfRun } from './date.js';
import { dialectOf, type DialectArguments } from './dialect.js';
import { listsOf, textOption, textOptions, workersOf, WrongCommandLine } from './usage.js';

/** What `pack` and `plan` are given on the command line, as the parser hands it over. */
export interface BatchArguments extends CommonOptions, DialectArguments {
  readonly lists: readonly string[];
  readonly catalogue?: string | undefined;
  readonly library?: string | undefined;
  readonly columns?: string | undefined;
  readonly settings?: string | undefined;
  readonly jobFacts?: string | undefined;
  readonly answers?: string | readonly string[] | undefined;
  readonly equipmentFacts?: string | readonly string[] | undefined;
  readonly job?: string | undefined;
  readonly out?: string | undefined;
  readonly date?: string | undefined;
  readonly ownerLanguage?: string | undefined;
  readonly crewLanguage?: string | undefined;
  readonly photos?: string | undefined;
  readonly with?: string | undefined;
  readonly cutsheets?: string | undefined;
  readonly separate: boolean;
  readonly templates?: string | undefined;
  readonly force: boolean;
  readonly browser?: string | undefined;
  readonly workers?: string | undefined;
}

const CLEAR_LINE = '\r\u001b[2K';

/**
 * Runs a batch and tells what came of it.
 * @param make what to make of each job
 * @param given the command line
 * @param context where to tell it
 * @returns the exit status of the contract
 */
export async function batch(
  make: BatchOptions['make'],
  given: BatchArguments,
  context: Context,
): Promise<ExitStatus> {
  const options = batchOptions(make, given, context);
  const screen = progressScreen(given, context);
  // Not by index.ts, which loads planning and documents too: a run that changes nothing needs neither.
  const { runBatch } = await import('../batch/run-batch.js');
  let result: BatchResult;
  try {
    result = await runBatch({
      ...options,
      stopOnSignals: true,
      stdin: context.stdin,
      onProgress: screen.progress,
      onNotice: (notice) => {
        screen.clear();
        if (!given.quiet) context.err(noteText(notice));
      },
    });
  } finally {
    screen.clear();
  }
  tell(make, result, given, context);
  return result.exitStatus;
}

function batchOptions(make: BatchOptions['make'], given: BatchArguments, context: Context): BatchOptions {
  const date = textOption('date', given.date);
  const epoch = context.env['SOURCE_DATE_EPOCH'];
  return {
    make,
    lists: listsOf(given.lists),
    catalogue: textOption('catalogue', given.catalogue),
    library: textOption('library', given.library),
    columns: textOption('columns', given.columns),
    settings: textOption('settings', given.settings),
    dialect: dialectOf(given),
    jobFacts: textOption('job-facts', given.jobFacts),
    answers: textOptions('answers', given.answers),
    equipmentFacts: textOptions('equipment-facts', given.equipmentFacts),
    job: textOption('job', given.job),
    out: textOption('out', given.out),
    date: dateOfRun(date, epoch, new Date()),
    dateGiven: date !== undefined || (epoch !== undefined && epoch !== ''),
    ownerLanguage: languageOption(
      'owner-language',
      given.ownerLanguage,
      isOwnerLanguage,
      OWNER_LANGUAGE_CODES,
    ),
    crewLanguage: languageOption('crew-language', given.crewLanguage, isCrewLanguage, CREW_LANGUAGES),
    photos: textOption('photos', given.photos),
    appendices: appendicesOf(textOption('with', given.with)),
    cutSheets: textOption('cutsheets', given.cutsheets),
    separate: given.separate,
    templates: textOption('templates', given.templates),
    force: given.force,
    browser: textOption('browser', given.browser),
    workers: workersOf(textOption('workers', given.workers)),
  };
}

function languageOption(
  option: string,
  given: string | undefined,
  isKnown: (code: string) => boolean,
  codes: readonly string[],
): string | undefined {
  const code = textOption(option, given);
  if (code === undefined || isKnown(code)) return code;
  const expected = codes.join(' or ');
  throw new WrongCommandLine(note(COMMAND_MESSAGES.noSuchValue, { option, found: code, expected }));
}

function appendicesOf(text: string | undefined): BatchOptions['appendices'] {
  if (text === undefined) return undefined;
  return text.split(',').map((word) => {
    const found = appendixOf(word.trim());
    if (found !== undefined) return found;
    const expected = `some of ${APPENDIX_NAMES.join(', ')}, with commas between them`;
    throw new WrongCommandLine(note(COMMAND_MESSAGES.noSuchValue, { option: 'with', found: word, expected }));
  });
}

interface ProgressScreen {
  readonly progress: (now: Progress) => void;
  readonly clear: () => void;
}

function progressScreen(given: BatchArguments, context: Context): ProgressScreen {
  let drawn = false;
  const clear = (): void => {
    if (drawn) context.err(CLEAR_LINE);
    drawn = false;
  };
  if (given.quiet) return { progress: () => undefined, clear };
  // NO_COLOR asks for plain output; a bar is none.
  if (!context.errIsTerminal || (context.env['NO_COLOR'] ?? '') !== '') {
    return { progress: (now) => context.err(progressLine(now)), clear };
  }
  return {
    progress: (now) => {
      context.err(`${CLEAR_LINE}${progressBar(now)}`);
      drawn = true;
    },
    clear,
  };
}

function tell(
  make: BatchOptions['make'],
  result: BatchResult,
  given: BatchArguments,
  context: Context,
): void {
  const { jobs, items, unreadable } = result;
  for (const item of unreadable) context.err(itemText(item));
  if (!given.quiet) {
    const unread = new Set<OpenItem>(unreadable);
    context.err(gapsText(items));
    context.err(
      itemsText(
        items.filter(({ item }) => !unread.has(item)),
        given.verbose,
      ),
    );
  }
  if (given.json) {
    context.out(`${JSON.stringify(jsonOf(make, result), null, 2)}\n`);
  } else if (!given.quiet && jobs.length > 0) {
    context.out(batchTable(jobs));
  }
  if (given.quiet) return;
  context.err(draftsText(jobs, items));
  if (jobs.length > 0) {
    const { all, unreadable: unread } = result.lists;
    const lists = unread === 0 ? '' : `${counted(all, 'list')}, ${String(unread)} unreadable; `;
    const drafts = jobs.filter((j) => j.status === 'draft').length;
    const failed = jobs.filter((j) => j.status === 'failed').length;
    const not = [drafts > 0 ? counted(drafts, 'draft') : '', failed > 0 ? `${String(failed)} failed` : ''];
    const among = not.filter((s) => s !== '').join(', ');
    context.err(
      `${lists}${counted(jobs.length, 'job')} in ${printable(result.out)}${among === '' ? '' : `: ${among}`}\n`,
    );
  }
}

function jsonOf(make: BatchOptions['make'], result: BatchResult): unknown {
  const { exitStatus, out, lists, jobs, items, unreadable, missingModels, leftFolders, interrupted } = result;
  const flat = ({ job, item }: JobItem): unknown => ({ job, ...itemInEnglish(item) });
  return {
    version: 1,
    command: make,
    exitStatus,
    out,
    lists,
    jobs,
    openItems: items.map(flat),
    unreadable: unreadable.map(itemInEnglish),
    missingModels,
    leftFolders,
    interrupted,
  };
}
