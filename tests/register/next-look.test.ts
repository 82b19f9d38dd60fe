import { describe, expect, it } from 'vitest';
import { nextLook } from '../../src/register/next-look.js';

describe('the day of the next look', () => {
  it.each([
    ['2025-03-14', 12, '2026-03-14'],
    ['2024-02-29', 12, '2025-02-28'],
    ['2024-02-29', 48, '2028-02-29'],
    ['2025-08-31', 6, '2026-02-28'],
    ['2025-12-31', 1, '2026-01-31'],
    ['2025-11-30', 3, '2026-02-28'],
    ['1999-12-01', 1, '2000-01-01'],
  ])('%s, %d months on', (last, months, expected) => {
    expect(nextLook(last, months)).toBe(expected);
  });
});
