import { syllable } from 'syllable';
import { describe, expect, it } from 'vitest';
import type { DocumentContext } from '../../src/documents/parts/context.js';
import { lookOf } from '../../src/documents/owner-sheet/looks.js';
import { renderDocument } from '../../src/documents/render.js';
import { defaultSettings } from '../../src/model/settings.js';
import { OWNER_LANGUAGE_CODES, ownerStrings } from '../../src/words/languages.js';
import { demoPlans } from './fixtures/demo-plans.js';
import { draftPlan, housePlan, hutPlan } from './fixtures/plans.js';
import { setByHand } from './fixtures/set-by-hand.js';

const context: DocumentContext = {
  settings: defaultSettings(),
  date: '2025-03-14',
  fonts: { css: () => '', covers: () => true },
  measure: setByHand,
};

/** The running text of an owner's sheet: all that its template marks as text; tags of equipment are names, not words. */
function runningText(html: string): string {
  const marked = [...html.matchAll(/<(\w+)[^>]*class="text"[^>]*>(.*?)<\/\1>/gs)].map((m) => m[2] ?? '');
  return marked
    .join(' ')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&#x27;/g, "'")
    .replace(/\s+/g, ' ');
}

/** Flesch-Kincaid grade from counts (check-values.md section 9, seen). */
function gradeOf(words: number, sentences: number, syllables: number): number {
  return (0.39 * words) / sentences + (11.8 * syllables) / words - 15.59;
}

function grade(text: string): number {
  const sentences = text.split(/[.!?]+(?:\s|$)/).filter((s) => /\w/.test(s)).length;
  const words = text.match(/[A-Za-z']+/g) ?? [];
  return gradeOf(
    words.length,
    sentences,
    words.reduce((sum, word) => sum + syllable(word), 0),
  );
}

/**
 * Syllables of a Spanish word: each open vowel and each accented close one is one; close vowels alone are one together,
 * and beside an open one none. The u of que, qui, gue, gui is silent.
 */
function spanishSyllables(word: string): number {
  const heard = word
    .toLowerCase()
    .replace(/([qg])u(?=[eiéí])/g, '$1')
    .replace(/y(?![aeiouáéíóúü])/g, 'i');
  const groups = heard.match(/[aeiouáéíóúü]+/g) ?? [];
  return groups.reduce((sum, group) => sum + Math.max(1, group.match(/[aeoáéóíú]/g)?.length ?? 0), 0);
}

/**
 * How easily a Spanish text reads, 100 the easiest. Flesch-Kincaid is made for English; this is the formula of
 * F. Szigriszt Pazos (Sistemas predictivos de legibilidad del mensaje escrito, 1993), value from memory.
 */
function perspicuity(text: string): number {
  const sentences = text.split(/[.!?]+(?:\s|$)/).filter((s) => /\p{L}/u.test(s)).length;
  const words = text.match(/\p{L}+/gu) ?? [];
  const syllables = words.reduce((sum, word) => sum + spanishSyllables(word), 0);
  return 206.835 - (62.3 * syllables) / words.length - words.length / sentences;
}

/** All strings of plain data. */
function stringsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  return value !== null && typeof value === 'object' ? Object.values(value).flatMap(stringsIn) : [];
}

describe('the grade of a text', () => {
  // check-values.md section 9, seen.
  it.each([
    [13, 1, 24, 11.265],
    [16, 1, 23, 7.6125],
  ])('of %i words, %i sentence, %i syllables is as published', (words, sentences, syllables, published) => {
    expect(gradeOf(words, sentences, syllables)).toBeCloseTo(published, 2);
  });
});

describe('the ease of a Spanish text', () => {
  it.each([
    ['corriente', 3],
    ['sobretensión', 4],
    ['día', 2],
    ['quien', 1],
    ['guerra', 2],
    ['baúl', 2],
    ['aéreo', 4],
    ['ciudad', 2],
    ['muy', 1],
    ['ya', 1],
  ])('counts the syllables of %s: %i', (word, syllables) => {
    expect(spanishSyllables(word)).toBe(syllables);
  });

  it('is lower for long words in long sentences', () => {
    const hard =
      'La coordinación de los dispositivos de protección contra sobretensiones transitorias corresponde al fabricante.';
    expect(perspicuity(hard)).toBeLessThan(40);
  });
});

describe.each([...demoPlans(), hutPlan(), housePlan(), draftPlan()].map((p) => [p.job, p] as const))(
  "the owner's sheet of %s",
  (_job, plan) => {
    it('reads at grade 6 or below', async () => {
      const { html } = await renderDocument('owner-sheet', plan, { ...context, ownerLanguage: 'en' });
      const text = runningText(html);
      expect(text.split(' ').length).toBeGreaterThan(120);
      expect(grade(text)).toBeLessThanOrEqual(6);
    });

    it('reads easily in Spanish', async () => {
      const { html } = await renderDocument('owner-sheet', plan, { ...context, ownerLanguage: 'es' });
      const text = runningText(html);
      expect(text.split(' ').length).toBeGreaterThan(120);
      // From 65 up a text is "quite easy" on the INFLESZ scale (Barrio-Cantalejo and others, 2008), value from memory.
      expect(perspicuity(text)).toBeGreaterThanOrEqual(65);
    });

    it.each(OWNER_LANGUAGE_CODES)('says in %s where each protector is, and its lights', async (code) => {
      const { html, metadata } = await renderDocument('owner-sheet', plan, {
        ...context,
        ownerLanguage: code,
      });
      expect(metadata.language).toBe(code);
      expect(html).toContain(`<html lang="${code}">`);
      for (const protector of plan.protectors) {
        expect(html).toContain(`<b>${protector.tag}</b>`);
        const look = lookOf(plan, protector, ownerStrings(code));
        for (const text of look.texts) expect(html).toContain(text);
      }
    });
  },
);

/** Words of the trade in no language or in several. */
const TRADE = /\b(SPD|MCOV|VPR|kA|MPPT)\b/i;
/** By language: words of the trade, words of two meanings, an order to open something, and what forbids it. */
const WORDS: { readonly [code: string]: { readonly [W in 'trade' | 'two' | 'open' | 'never']: RegExp } } = {
  en: {
    trade: /\b(inverter|conductor|channel)\b/i,
    two: /\bnote [a-z]\b/i,
    open: /\bopen\b/i,
    never: /\bnever\b/i,
  },
  es: {
    trade: /\b(inversor|fase|conductor|inverter)\b/i,
    // The grid is no "red", which a reader of two languages takes for a colour; "la luz" is a light, never the power.
    two: /\b(red|se va la luz|nota [a-z])\b/i,
    open: /\b(abra|abrir)\b/i,
    never: /\bnunca\b/i,
  },
};

describe.each(OWNER_LANGUAGE_CODES)('the strings in %s', (code) => {
  const strings = ownerStrings(code);

  it('are all there, but for the thing that a row of no kind is', () => {
    const { things, ...rest } = strings;
    expect(stringsIn(rest)).not.toContain('');
    expect(Object.entries(things).filter(([, thing]) => thing === '')).toEqual([['other', '']]);
  });

  it('fill in what they are handed, and nothing else', () => {
    const names = stringsIn(strings).flatMap((text) => [...text.matchAll(/\{(\w+)\}/g)].map((m) => m[1]));
    expect([...new Set(names)].sort()).toEqual(
      [
        'colour',
        'date',
        'dates',
        'flags',
        'list',
        'lights',
        'look',
        'number',
        'numbers',
        'place',
        'state',
        'states',
        'tag',
        'thing',
      ].sort(),
    );
  });

  it('use none of the trade and never say to open a box', () => {
    const all = stringsIn({ ...strings, label: '' });
    const words = WORDS[code];
    if (!words) throw new Error(`WORDS doesn’t say yet how ${code} tells someone to open a box`);
    expect(all.filter((text) => TRADE.test(text) || words.trade.test(text))).toEqual([]);
    expect(all.filter((text) => words.two.test(text))).toEqual([]);
    const orders = all.flatMap((text) => text.split('.')).filter((text) => words.open.test(text));
    expect(orders).not.toEqual([]);
    expect(orders.filter((order) => !words.never.test(order))).toEqual([]);
  });
});

describe('the language of the owner', () => {
  it('goes by its primary tag, and is English where there is no other', () => {
    expect(ownerStrings('es-MX').language).toBe('es');
    expect(ownerStrings('ES').language).toBe('es');
    expect(ownerStrings('xx').language).toBe('en');
    expect(ownerStrings('', 'xx', 'es').language).toBe('es');
  });

  it('is that of the command line before that of the job, before that of the settings', async () => {
    const plan = { ...hutPlan(), ownerLanguage: 'es' };
    expect((await renderDocument('owner-sheet', plan, context)).metadata.language).toBe('es');
    expect(
      (await renderDocument('owner-sheet', plan, { ...context, ownerLanguage: 'en' })).metadata.language,
    ).toBe('en');
    const settings = { ...defaultSettings(), ownerLanguage: 'es' };
    const none = { ...plan, ownerLanguage: '' };
    expect((await renderDocument('owner-sheet', none, { ...context, settings })).metadata.language).toBe(
      'es',
    );
  });
});
