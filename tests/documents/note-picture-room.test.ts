import { describe, expect, it } from 'vitest';
import { wiringNotes } from '../../src/documents/closeout-pack/wiring-note.js';
import { lineWidth } from '../../src/documents/parts/text-width.js';
import { defaultSettings } from '../../src/model/settings.js';
import { CREW_LANGUAGES } from '../../src/words/crew-language.js';
import { demoPlans } from './fixtures/demo-plans.js';

const SIZE = 14;
const TEXT = /<text x="([\d.]+)" y="[\d.]+"( font-weight="700")?>([^<]*)<\/text>/g;
const RECT = /<rect x="([\d.]+)" y="[\d.]+" width="([\d.]+)"/g;

const plain = (text: string): string =>
  text
    .replace(/&#x([0-9A-F]+);/gi, (_, code: string) => String.fromCodePoint(parseInt(code, 16)))
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&');

describe.each(CREW_LANGUAGES)('the pictures of wiring notes in %s', (language) => {
  it('keep the words of each box within it', () => {
    let boxed = 0;
    for (const plan of demoPlans())
      for (const { picture, tags } of wiringNotes(plan, defaultSettings(), language)) {
        // Wide ones are boxes, narrow ones bars and conductors.
        const boxes = [...picture.matchAll(RECT)]
          .map(([, x, width]) => ({ left: Number(x), right: Number(x) + Number(width) }))
          .filter(({ left, right }) => right - left > 100 && right - left < 210 && left > 120);
        for (const [, x, weight, text = ''] of picture.matchAll(TEXT)) {
          const left = Number(x);
          const box = boxes.find((one) => left > one.left && left < one.right);
          if (!box || left > 350) continue;
          boxed += 1;
          const right = left + lineWidth(plain(text), SIZE, weight === undefined ? 400 : 700);
          expect(right, `${plan.job} ${tags}: ${text}`).toBeLessThanOrEqual(box.right - 2);
        }
      }
    expect(boxed).toBeGreaterThan(100);
  });
});
