import { itemAt, note } from '../model/message.js';
import { BATCH_MESSAGES } from '../model/messages/batch.js';
import type { OpenItem } from '../model/open-item.js';
import type { WrittenPack } from './pack-files.js';

/**
 * What the run that writes a pack tells of the files that it found in the folder.
 * @param folder name of the job's folder
 */
export function writtenTold(folder: string, { edited, kept, leftOut }: WrittenPack): readonly OpenItem[] {
  const at = (name: string): OpenItem['file'] => `${folder}/${name}`;
  return [
    ...edited.map((file) => ({ file, told: note(BATCH_MESSAGES.fileEdited, { file, folder }) })),
    ...kept.map(({ file, fresh }) => ({
      file,
      told: note(BATCH_MESSAGES.formKept, { file, fresh, folder }),
    })),
    ...leftOut.map((file) => ({ file, told: note(BATCH_MESSAGES.labelsRemoved, { file, folder }) })),
  ].map(({ file, told }) => itemAt(told, { file: at(file), line: 0, column: '' }));
}
