import { readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { nearest } from '../../words/closeness.js';
import { EXIT } from '../../model/exit-status.js';
import { Failure } from '../../model/failure.js';
import { note } from '../../model/message.js';
import { documentMessages } from '../../model/messages/documents.js';
import { templateFailure } from './template-failure.js';
import { SHIPPED_TEMPLATES } from './templates.js';

/** Files that other files have taken the place of, and what to change. */
const REPLACED: { readonly [file: string]: string } = {
  'permit-sheet/document.hbs':
    'permit sheets are drawing sheets now: permit-sheet/sheets.hbs holds frame and title strip, a file beside it each block',
  'styles/permit-sheet.css':
    'permit sheets are drawing sheets now: styles/permit-frame.css and styles/permit-blocks.css are their styles',
  'partials/calculation.hbs': 'the pack has a calculation summary now: contents/calculations.hbs',
  'partials/calculations.hbs': 'permit sheets and pack share contents/calculations.hbs now',
  'partials/calculations-short.hbs': 'permit sheets and pack share contents/calculations.hbs now',
  'partials/schedule.hbs': 'permit sheets and pack share contents/schedule.hbs now',
  'partials/legend.hbs': 'permit sheets and pack share contents/legend.hbs now',
  'partials/draft-box.hbs':
    'a draft says so on its cover and in its title strip now: closeout-pack/document.hbs, permit-sheet/sheets.hbs',
  'partials/caution.hbs': 'safety messages are panels now: partials/safety.hbs',
  'partials/wiring-note.hbs': 'wiring notes are one page each kind now: closeout-pack/note.hbs',
  'partials/open-items.hbs':
    'what is open for the office is in report.html and open-items.csv now, not on paper',
  'partials/not-placed.hbs':
    'ports without a protector come with --with bare now: closeout-pack/appendix.hbs',
  'partials/sources.hbs': 'sources come with --with sources now: permit-appendix/document.hbs',
};

/** Files that go before ours; whatever else lies there is nobody's matter. */
const isTemplate = (file: string): boolean => /\.(?:hbs|css)$/.test(file);
const slashes = (file: string): string => file.split(path.sep).join('/');

function filesOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' }).map(slashes).sort();
}

function ownFiles(folder: string): string[] {
  try {
    return filesOf(folder);
  } catch (error) {
    throw new Failure(note(documentMessages.noTemplates, { folder }), EXIT.usage, { cause: error });
  }
}

/**
 * Looks through a folder of templates before any work is begun: one clear message where it isn't there, where a file of it goes
 * before none of ours, and where one doesn't parse.
 * @param folder as given
 * @throws Failure `documents/no-templates` (64), `documents/template-unknown`, `documents/template-replaced`,
 *   `documents/template` (70)
 */
export async function checkOwnTemplates(folder: string): Promise<void> {
  const { default: Handlebars } = await import('handlebars');
  const shipped = filesOf(SHIPPED_TEMPLATES);
  const known = new Set(shipped);
  for (const file of ownFiles(folder)) {
    const isFolder = statSync(path.join(folder, file), { throwIfNoEntry: false })?.isDirectory() ?? false;
    if (!isTemplate(file) && !isFolder) continue;
    const isOwnPartial = isTemplate(file) && file.startsWith('partials/') && REPLACED[file] === undefined;
    if (!known.has(file) && !isOwnPartial) throw unknown(file, shipped);
    if (!file.endsWith('.hbs') || isFolder) continue;
    try {
      Handlebars.parse(readFileSync(path.join(folder, file), 'utf8'));
    } catch (error) {
      throw templateFailure(file, error);
    }
  }
}

function unknown(file: string, shipped: readonly string[]): Failure {
  const instead = REPLACED[file];
  if (instead !== undefined)
    return new Failure(note(documentMessages.templateReplaced, { file, instead }), EXIT.failed);
  const guess = nearest(file.toLowerCase(), shipped) ?? '';
  return new Failure(note(documentMessages.templateUnknown, { file, nearest: guess }), EXIT.failed);
}
