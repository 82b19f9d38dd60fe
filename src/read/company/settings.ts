import { CREW_LANGUAGES, isCrewLanguage } from '../../words/crew-language.js';
import { itemAt, note } from '../../model/message.js';
import { COMPANY_NOT_STATED } from '../../model/messages/company-files.js';
import type { OpenItem } from '../../model/open-item.js';
import { defaultSettings, SettingsSchema, type Settings } from '../../model/settings.js';
import { isOwnerLanguage, OWNER_LANGUAGE_CODES } from '../../words/languages.js';
import { shownPath } from '../../words/shown-path.js';
import { readJson } from '../file/json-file.js';

/** Settings as read; where the file can't be used they are the defaults, with items that say why. */
export interface SettingsReading {
  readonly settings: Settings;
  readonly items: readonly OpenItem[];
  readonly unreadable: readonly OpenItem[];
}

/** What the company has still to say of itself before a blank stands on paper. */
function asked({ company }: Settings, path: string | undefined): OpenItem[] {
  const place = { file: path === undefined ? '' : shownPath(path), line: 0 };
  return (['phone', 'licence'] as const)
    .filter((field) => company[field].trim() === '')
    .map((field) => itemAt(note(COMPANY_NOT_STATED, { field }), { ...place, column: `company.${field}` }));
}

/**
 * Reads the company's settings.
 * @param path of the JSON file; undefined: the defaults
 * @returns never throws; a file with any fault isn't used at all, since half of the settings would decide in silence
 */
export async function readSettings(path: string | undefined): Promise<SettingsReading> {
  if (path === undefined) {
    const settings = defaultSettings();
    return { settings, items: asked(settings, path), unreadable: [] };
  }
  const schema = SettingsSchema.refine(({ ownerLanguage }) => isOwnerLanguage(ownerLanguage), {
    path: ['ownerLanguage'],
    message: `the owner’s sheet can be written in ${OWNER_LANGUAGE_CODES.join(' or ')}`,
  }).refine(({ crewLanguage }) => isCrewLanguage(crewLanguage), {
    path: ['crewLanguage'],
    message: `the crew’s pages can be written in ${CREW_LANGUAGES.join(' or ')}`,
  });
  const reading = await readJson(path, schema);
  return reading.ok
    ? { settings: reading.value, items: asked(reading.value, path), unreadable: [] }
    : { settings: defaultSettings(), items: [], unreadable: reading.items };
}
