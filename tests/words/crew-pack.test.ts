import { describe, expect, it } from 'vitest';
import { renderDocument } from '../../src/documents/render.js';
import { defaultSettings } from '../../src/model/settings.js';
import type { Plan } from '../../src/model/plan.js';
import {
  asBuiltWords,
  CREW_LANGUAGES,
  crewLanguage,
  crewPackWords,
  isCrewLanguage,
} from '../../src/words/crew-language.js';
import { demoPlans } from '../documents/fixtures/demo-plans.js';
import { recordOf } from '../documents/fixtures/records.js';
import { setByHand } from '../documents/fixtures/set-by-hand.js';

/** Every string of a list of words by its path; one that is made of values, with letters that no word has in their place. */
function stringsOf(words: object, path = ''): Map<string, string> {
  const found = new Map<string, string>();
  for (const [key, value] of Object.entries(words) as [string, unknown][]) {
    const at = `${path}/${key}`;
    if (typeof value === 'string') found.set(at, value);
    else if (typeof value === 'function')
      found.set(at, String((value as (...of: readonly unknown[]) => unknown)(2, '§', '§', '§')));
    else if (typeof value === 'object' && value !== null)
      for (const [inner, text] of stringsOf(value, at)) found.set(inner, text);
  }
  return found;
}

/** What a language says of a pack, and of the work once it is done. */
const allOf = (language: 'en' | 'es'): Map<string, string> =>
  stringsOf({ pack: crewPackWords(language), built: asBuiltWords(language) });

const EN = allOf('en');
const wordsIn = (texts: Iterable<string>): Set<string> =>
  new Set([...texts].flatMap((text) => text.toLowerCase().match(/\p{L}{4,}/gu) ?? []));

describe.each(CREW_LANGUAGES)('the words of the crew’s pack in %s', (language) => {
  const own = allOf(language);

  it('are all there', () => {
    expect([...own.keys()].sort()).toEqual([...EN.keys()].sort());
    for (const [path, text] of own) expect(text.trim(), path).not.toBe('');
  });

  it('are whole sentences where those of the other language are', () => {
    for (const [path, text] of own) expect(/\.$/.test(text), path).toBe(/\.$/.test(EN.get(path) ?? ''));
  });
});

describe('the language of a crew', () => {
  const context = {
    settings: defaultSettings(),
    date: '2025-03-14',
    fonts: { css: () => '', covers: (): boolean => true },
    measure: setByHand,
  };
  const [plan] = demoPlans();
  if (!plan) throw new Error('the demo has jobs');
  const languageOf = async (given: { option?: string; job?: string; setting?: string }): Promise<string> => {
    const origin = { from: 'list', file: 'list.csv', line: 2, column: 'crew_language' } as const;
    const fact = { field: 'crew_language', text: given.job ?? '', value: given.job ?? '', unit: '', origin };
    const of: Plan = given.job === undefined ? plan : { ...plan, facts: [...plan.facts, fact] };
    const settings = { ...defaultSettings(), crewLanguage: given.setting ?? 'en' };
    const option = given.option === undefined ? {} : { crewLanguage: given.option };
    return (await renderDocument('closeout-pack', of, { ...context, settings, ...option })).metadata.language;
  };

  it('is that of the command line, else of the job, else of the settings', async () => {
    expect(await languageOf({})).toBe('en');
    expect(await languageOf({ setting: 'es' })).toBe('es');
    expect(await languageOf({ setting: 'es', job: 'en' })).toBe('en');
    expect(await languageOf({ job: 'en', option: 'es-MX' })).toBe('es');
  });

  it('is English where it is none of those that are there', () => {
    expect(crewLanguage('', 'fr', 'es-MX')).toBe('es');
    expect(crewLanguage('fr')).toBe('en');
    expect(isCrewLanguage('fr')).toBe(false);
  });

  /** Sections that aren't marked as English. */
  const translated = (html: string): string =>
    [...html.matchAll(/<section class="(?:cover|record|as-built)"[^]*?<\/section>/g)]
      .map(([text]) => text)
      .join();

  it.each(demoPlans().map((one) => [one.job, one] as const))(
    'leaves no English word on the Spanish cover, checks and record of %s',
    async (_, of) => {
      const previous = { ...of, protectors: of.protectors.slice(1), revision: 'A' };
      const record = recordOf(of, {
        state: 'record open',
        entry: (_tag, entry) => ({
          ...entry,
          device: { ...entry.device, fitted: '' },
          leadLength: 9,
          faultCurrent: 12,
        }),
        reading: (one) => ({ ...one, found: one.kind === 'volts' ? '9999' : one.due ? '' : 'dark' }),
      });
      const { html } = await renderDocument('closeout-pack', of, {
        ...context,
        record,
        crewLanguage: 'es',
        previous,
      });
      const text = translated(html).replace(/<[^>]*>/g, '\n');
      expect(text.length).toBeGreaterThan(2000);
      // What the list, the catalogue and the company call things stays as they call it.
      const data = wordsIn([JSON.stringify([of, previous, context.settings, record])]);
      const spanish = wordsIn(allOf('es').values());
      const english = [...wordsIn(EN.values())].filter((word) => !spanish.has(word) && !data.has(word));
      expect(english.length).toBeGreaterThan(80);
      const there = wordsIn([text]);
      expect(english.filter((word) => there.has(word))).toEqual([]);
    },
  );
});
