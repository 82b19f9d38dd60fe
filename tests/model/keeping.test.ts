import { describe, expect, it } from 'vitest';
import { keeping } from '../../src/model/keeping.js';

/** A function that keeps what it made, and how often it made something. */
function counted() {
  const made: string[] = [];
  const kept = keeping(
    (of: string) => of,
    (of) => {
      made.push(of);
      if (of === 'none') throw new Error('none');
      return of === 'unknown' ? undefined : { of };
    },
  );
  return { kept, made };
}

describe('a function that keeps what it made', () => {
  it('makes what is asked twice once, and hands out the same', () => {
    const { kept, made } = counted();
    expect(kept('a')).toBe(kept('a'));
    expect(kept('a')).not.toBe(kept('b'));
    expect(made).toEqual(['a', 'b']);
  });

  it('keeps that there is nothing', () => {
    const { kept, made } = counted();
    expect([kept('unknown'), kept('unknown')]).toEqual([undefined, undefined]);
    expect(made).toEqual(['unknown']);
  });

  it('drops what it kept before it grows with what a hostile list asks for', () => {
    const { kept, made } = counted();
    for (let i = 0; i <= 500; i += 1) kept(`${i}`);
    expect(made).toHaveLength(501);
    kept('500');
    expect(made).toHaveLength(501);
    kept('0');
    expect(made).toHaveLength(502);
  });

  it('keeps nothing of what couldn’t be made', () => {
    const { kept, made } = counted();
    expect(() => kept('none')).toThrow('none');
    expect(() => kept('none')).toThrow('none');
    expect(made).toEqual(['none', 'none']);
  });
});
