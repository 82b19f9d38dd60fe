import { describe, expect, it } from 'vitest';
import { isolationView } from '../../src/documents/closeout-pack/isolation-view.js';
import { wiringNotes } from '../../src/documents/closeout-pack/wiring-note.js';
import type { Plan } from '../../src/model/plan.js';
import { defaultSettings } from '../../src/model/settings.js';
import type { CrewLanguage } from '../../src/words/crew-language.js';
import { demoPlans } from './fixtures/demo-plans.js';

/** The words of a picture, without breaks of lines. */
const drawn = (svg: string): string => svg.replace(/<[^>]*>/g, ' ');

/** Every string of a value, pictures as their words. */
function stringsOf(value: unknown): string[] {
  if (typeof value === 'string') {
    const label = /aria-label="([^"]*)"/.exec(value)?.[1] ?? '';
    return value.startsWith('<svg') ? [drawn(value), label] : [value];
  }
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value as Readonly<Record<string, unknown>>).flatMap(([key, inner]) =>
    key === 'style' || key === 'id' ? [] : stringsOf(inner),
  );
}

const wordsIn = (texts: Iterable<string>): Set<string> =>
  new Set([...texts].flatMap((text) => text.toLowerCase().match(/\p{L}{4,}/gu) ?? []));

/** Words that both languages have. */
const BOTH = new Set<string>(['cable', 'conductor', 'control', 'nfpa', 'plan', 'protector']);

describe('a Spanish note', () => {
  const views = (plan: Plan, language: CrewLanguage): Set<string> =>
    wordsIn(stringsOf([wiringNotes(plan, defaultSettings(), language), isolationView(plan, language)]));
  const english = new Set(demoPlans().flatMap((plan) => [...views(plan, 'en')]));

  it.each(demoPlans().map((plan) => [plan.job, plan] as const))('of %s has no English word', (_, plan) => {
    // What the list and the catalogue call things stays as they call it.
    const data = wordsIn([
      ...plan.site.equipments.flatMap(({ tag, place }) => [tag, place]),
      ...plan.protectors.flatMap(({ place, part, existing, serial, partDetails, wiring }) => [
        ...[place, part ?? '', existing ?? '', serial, partDetails?.maker ?? ''],
        ...[wiring.torque ?? '', wiring.leadGauge, wiring.wireRange ?? '', wiring.overcurrent ?? ''],
      ]),
    ]);
    const spanish = views(plan, 'es');
    expect(spanish.size).toBeGreaterThan(60);
    expect([...spanish].filter((word) => english.has(word) && !data.has(word) && !BOTH.has(word))).toEqual(
      [],
    );
  });
});
