import type { Argv } from 'yargs';
import { note } from '../model/message.js';
import { nearest } from '../words/closeness.js';
import { COMMAND_MESSAGES } from '../model/messages/command.js';
import { rulebookTable, ruleText } from '../screen/rulebook-page.js';
import type { Act, CommonOptions, Context } from './context.js';
import { withCommonOptions } from './options.js';
import { unmarkPlain, WrongCommandLine } from './usage.js';

/** `shuntbook rules [ID]`: the rulebook, or one rule of it. */
export function addRules(parser: Argv, act: Act): Argv {
  return parser.command(
    'rules [id]',
    'Print the rulebook, or one rule with its sources',
    (p) =>
      withCommonOptions(p)
        .positional('id', { type: 'string', describe: 'A rule, such as place/long-run' })
        .example('$0 rules place/long-run', 'one rule: why it is there, and its sources by basis'),
    (given) => act((context) => rules(given.id, given, context)),
  );
}

async function rules(id: string | undefined, given: CommonOptions, context: Context): Promise<0> {
  const { ALL_RULES } = await import('../index.js');
  const wanted = id === undefined ? undefined : unmarkPlain(id);
  const chosen = wanted === undefined ? ALL_RULES : ALL_RULES.filter((rule) => rule.id === wanted);
  if (wanted !== undefined && chosen.length === 0) {
    const near =
      nearest(
        wanted,
        ALL_RULES.map((rule) => rule.id),
      ) ?? '';
    throw new WrongCommandLine(note(COMMAND_MESSAGES.noSuchRule, { id: wanted, near }));
  }
  if (given.json)
    context.out(`${JSON.stringify({ version: 1, command: 'rules', rules: chosen }, null, 2)}\n`);
  else if (wanted === undefined) context.out(rulebookTable(chosen));
  else context.out(chosen.map(ruleText).join('\n'));
  return 0;
}
