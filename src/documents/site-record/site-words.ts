import type { CrewNoteWords } from '../../words/languages/crew-note-words.js';
import type { CrewPackWords } from '../../words/languages/crew-pack-words.js';
import type { SiteRecordWords } from '../../words/languages/site-record-words.js';

/** What the form says in the crew's language: words of its own, of the wiring notes, of the pack. */
export interface SiteWords {
  readonly site: SiteRecordWords;
  readonly note: CrewNoteWords;
  readonly pack: CrewPackWords;
}
