import { readdirSync } from 'node:fs';
import type { MessageEntry } from '../../src/words/message-kit.js';

const folder = new URL('../../src/words/messages/', import.meta.url);

/** The files of the message catalogue. */
export const MESSAGE_FILES: readonly string[] = readdirSync(folder).filter(
  (name) => name.endsWith('.ts') && name !== 'told.ts',
);

/** A message with the file and the name that it is exported by. */
export interface NamedEntry {
  readonly file: string;
  readonly name: string;
  readonly entry: MessageEntry;
}

const isEntry = (value: unknown): value is MessageEntry =>
  typeof value === 'object' && value !== null && 'kind' in value && 'words' in value;

/** Every entry that a file exports, by itself or within a table of entries. */
async function entriesOf(file: string): Promise<NamedEntry[]> {
  const module = (await import(new URL(file, folder).href)) as Record<string, unknown>;
  return Object.entries(module)
    .flatMap(([name, value]) =>
      isEntry(value) || typeof value !== 'object' || value === null
        ? [[name, value] as const]
        : Object.entries(value),
    )
    .flatMap(([name, entry]) => (isEntry(entry) ? [{ file, name, entry }] : []));
}

/** The whole message catalogue. */
export async function allEntries(): Promise<readonly NamedEntry[]> {
  return (await Promise.all(MESSAGE_FILES.map(entriesOf))).flat();
}
