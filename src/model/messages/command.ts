import { message } from '../message.js';

/** Messages about the command line itself. */
export const COMMAND_MESSAGES = {
  wrongCommandLine: message<{ problem: string; command: string }>(
    'command/wrong-command-line',
    'conflict',
    'office',
  ),
  givenTwice: message<{ option: string }>('command/given-twice', 'conflict', 'office'),
  emptyValue: message<{ what: string }>('command/empty-value', 'conflict', 'office'),
  noSuchDate: message<{ from: string; found: string }>('command/no-such-date', 'conflict', 'office'),
  noSuchWorkers: message<{ found: string }>('command/no-such-workers', 'conflict', 'office'),
  noSuchValue: message<{ option: string; found: string; expected: string }>(
    'command/no-such-value',
    'conflict',
    'office',
  ),
  nothingToCheck: message<Record<string, never>>('command/nothing-to-check', 'conflict', 'office'),
  noSuchField: message<{ name: string; near: string }>('command/no-such-field', 'conflict', 'office'),
  noSuchRule: message<{ id: string; near: string }>('command/no-such-rule', 'conflict', 'office'),
  noSuchPlan: message<{ path: string; because: string }>('command/no-such-plan', 'conflict', 'office'),
  whichJob: message<{ path: string; jobs: readonly string[] }>('command/which-job', 'conflict', 'office'),
  noSuchPort: message<{ wanted: string; job: string; known: string }>(
    'command/no-such-port',
    'conflict',
    'office',
  ),
  whichFile: message<{ option: string; names: readonly string[] }>(
    'command/which-file',
    'conflict',
    'office',
  ),
  alreadyThere: message<{ path: string }>('command/already-there', 'conflict', 'office'),
  fault: message<{ what: string }>('command/fault', 'conflict', 'office'),
} as const;
