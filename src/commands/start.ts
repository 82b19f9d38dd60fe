import { stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import type { Argv } from 'yargs';
import { note } from '../model/message.js';
import { COMMAND_MESSAGES } from '../model/messages/command.js';
import { printable } from '../screen/text-table.js';
import { startFiles } from '../screen/start-files.js';
import type { Act, CommonOptions, Context } from './context.js';
import { withCommonOptions } from './options.js';
import { listsOf } from './usage.js';

/** `shuntbook start FOLDER`: the files that a company begins with; nothing is overwritten. */
export function addStart(parser: Argv, act: Act): Argv {
  return parser.command(
    'start <folder>',
    'Write settings, a catalogue, a library, a column map, a list and a template to begin with',
    (p) =>
      withCommonOptions(p)
        .positional('folder', { type: 'string', demandOption: true, describe: 'A folder without such files' })
        .example(
          '$0 start out/begin',
          'settings, column map, the owner’s sheet’s template, and catalogue, library and list of one invented row each',
        ),
    (given) => act((context) => start(given, context)),
  );
}

async function start(given: CommonOptions & { readonly folder: string }, context: Context): Promise<0> {
  const [folder = ''] = listsOf([given.folder]);
  const { EXIT, Failure, shippedTemplate, writeWhole } = await import('../index.js');
  const files = startFiles(shippedTemplate);
  for (const { name } of files) {
    const path = join(folder, name);
    if (await isThere(path)) throw new Failure(note(COMMAND_MESSAGES.alreadyThere, { path }), EXIT.usage);
  }
  for (const below of new Set(files.map(({ name }) => dirname(name)))) {
    const here = files.filter(({ name }) => dirname(name) === below);
    await writeWhole(
      join(folder, below),
      here.map(({ name, text }) => ({ name: basename(name), content: text })),
    );
  }
  const next = `shuntbook pack ${join(folder, 'list.csv')} --templates ${join(folder, 'templates')} --out ${join(folder, 'out')}`;
  if (given.json) {
    const result = {
      version: 1,
      command: 'start',
      exitStatus: 0,
      folder,
      files: files.map((f) => f.name),
      next,
    };
    context.out(`${JSON.stringify(result, null, 2)}\n`);
    return 0;
  }
  context.out(files.map(({ name }) => `${printable(join(folder, name))}\n`).join(''));
  if (!given.quiet)
    context.err(`Every row there is an example. To see what comes out, run: ${printable(next)}\n`);
  return 0;
}

async function isThere(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}
