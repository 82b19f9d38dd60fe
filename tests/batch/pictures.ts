import { randomFillSync } from 'node:crypto';
import { crc32, deflateSync } from 'node:zlib';

/** A grey PNG; of noise it is as large as it has pixels. */
export function png(width: number, height: number, noise = false): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 0, 0, 0, 0], 8);
  const rows = Buffer.alloc((width + 1) * height);
  if (noise) randomFillSync(rows);
  for (let y = 0; y < height; y += 1) rows[y * (width + 1)] = 0;
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows, { level: 1 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** A PNG whose header says another size than its data has: all that is looked at before it would be printed. */
export function pngOfSize(width: number, height: number): Buffer {
  const small = png(1, 1);
  const header = Buffer.from(small.subarray(16, 29));
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  return Buffer.concat([small.subarray(0, 8), chunk('IHDR', header), small.subarray(33)]);
}

/** A small picture in a large file: a part of it that no reader looks into. */
export function heavyPng(width: number, bytes: number): Buffer {
  const small = png(width, 1);
  return Buffer.concat([
    small.subarray(0, 33),
    chunk('juNk', randomFillSync(Buffer.alloc(bytes))),
    small.subarray(33),
  ]);
}

function chunk(type: string, data: Buffer): Buffer {
  const whole = Buffer.alloc(12 + data.length);
  whole.writeUInt32BE(data.length, 0);
  whole.write(type, 4, 'latin1');
  data.copy(whole, 8);
  whole.writeUInt32BE(crc32(whole.subarray(4, 8 + data.length)), 8 + data.length);
  return whole;
}

/**
 * A JPEG of one frame and one scan, without the tables that a decoder needs.
 * @param frame marker of the frame, C0 baseline
 */
export function jpeg(width: number, height: number, frame = 0xc0, precision = 8): Buffer {
  const size = [height >> 8, height & 255, width >> 8, width & 255];
  return Buffer.from([
    ...[0xff, 0xd8],
    // A comment that holds what looks like an end.
    ...[0xff, 0xfe, 0, 6, 0xff, 0xd9, 0xff, 0xd9],
    ...[0xff, frame, 0, 11, precision, ...size, 1, 1, 0x11, 0],
    ...[0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0],
    ...[1, 2, 0xff, 0, 3, 0xff, 0xd0, 4, 0xff, 0xff, 0xd9],
  ]);
}
