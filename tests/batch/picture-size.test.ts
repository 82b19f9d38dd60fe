import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jpegSize, pngSize } from '../../src/batch/picture-size.js';
import { jpeg, png, pngOfSize } from './pictures.js';

describe('a PNG', () => {
  it('is walked through to its end', () => {
    expect(pngSize(png(3, 2))).toEqual({ width: 3, height: 2 });
    expect(pngSize(pngOfSize(30_000, 30_000))).toEqual({ width: 30_000, height: 30_000 });
    expect(pngSize(Buffer.concat([png(3, 2), Buffer.from('more')]))).toEqual({ width: 3, height: 2 });
  });

  it('is broken wherever it is cut or changed', () => {
    const whole = png(9, 9, true);
    for (let length = 8; length < whole.length; length += 1)
      expect(pngSize(whole.subarray(0, length))).toBe('broken');
    for (let at = 8; at < whole.length; at += 1) {
      const changed = Buffer.from(whole);
      changed[at] = (changed[at] ?? 0) ^ 1;
      expect(pngSize(changed), String(at)).toBe('broken');
    }
    expect(pngSize(pngOfSize(0, 5))).toBe('broken');
  });
});

describe('a JPEG', () => {
  it('is walked through to its end', () => {
    expect(jpegSize(jpeg(640, 480))).toEqual({ width: 640, height: 480 });
    expect(jpegSize(jpeg(640, 480, 0xc2))).toEqual({ width: 640, height: 480 });
    expect(jpegSize(Buffer.concat([jpeg(640, 480), Buffer.from('a film of the same')]))).toEqual({
      width: 640,
      height: 480,
    });
  });

  it('is broken where it is cut', () => {
    const whole = jpeg(640, 480);
    for (let length = 3; length < whole.length; length += 1)
      expect(jpegSize(whole.subarray(0, length)), String(length)).toBe('broken');
    expect(jpegSize(jpeg(0, 480))).toBe('broken');
  });

  it('of a coding that browsers do not read is none', () => {
    expect(jpegSize(jpeg(640, 480, 0xc3))).toBe('coding');
    expect(jpegSize(jpeg(640, 480, 0xc9))).toBe('coding');
    expect(jpegSize(jpeg(640, 480, 0xc1, 12))).toBe('coding');
  });
});

it('no bytes are too odd to be told from a picture', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
      const after = (start: number[]): Uint8Array => Uint8Array.from([...start, ...bytes]);
      for (const size of [
        jpegSize(after([0xff, 0xd8, 0xff])),
        pngSize(after([...png(1, 1).subarray(0, 33)])),
      ])
        expect(typeof size === 'string' || size.width > 0).toBe(true);
    }),
  );
});
