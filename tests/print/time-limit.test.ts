import { describe, expect, it } from 'vitest';
import { timeLimit } from '../../src/print/time-limit.js';

describe('the time that a document may take', () => {
  const markup = (length: number): string => '<p>word</p>'.repeat(Math.ceil(length / 11));
  const picture = (length: number): string =>
    `<img src="data:image/jpeg;base64,${'QUJD'.repeat(length / 4)}">`;

  it('is what is given for a small one, and grows with what a document holds', () => {
    expect(timeLimit('', 60_000)).toBe(60_000);
    expect(timeLimit(markup(1000), 60_000)).toBeLessThan(61_000);
    // 602 protectors made 23 MB, which took four minutes where half of the machine was busy otherwise.
    expect(timeLimit(markup(23_000_000), 60_000)).toBeGreaterThan(10 * 240_000);
    expect(timeLimit(markup(2_000_000), 60_000)).toBeLessThan(timeLimit(markup(3_000_000), 60_000));
  });

  it('counts pictures and fonts little, however many there are', () => {
    const pictures = picture(4_000_000).repeat(10);
    const limit = timeLimit(pictures, 60_000);
    expect(limit).toBeGreaterThan(2 * 60_000);
    expect(limit).toBeLessThan(4 * 60_000);
    expect(timeLimit(`url(data:font/woff2;base64,${'A'.repeat(4_000_000)}`, 60_000)).toBeLessThan(80_000);
  });

  it('grows with the time that is given for a document of nothing', () => {
    const html = markup(1_000_000);
    expect(timeLimit(html, 20)).toBeGreaterThan(timeLimit(html, 10) + 10);
  });
});
