// How much of a page stays blank below what is printed on it.

/** Grey from which on a dot counts as paper, of 255: anything but white. */
const PAPER = 250;
/** A line along that much of a side is part of the frame, or a rule over the whole width. */
const FRAME = 0.8;

/**
 * A picture whose frame is wiped out, and what isn't looked at.
 * @param {import('./ink.d.mts').Picture} picture
 * @param {readonly import('./ink.d.mts').Box[]} boxes what isn't looked at
 * @returns {Uint8Array} 1 where there is ink
 */
function inkOf({ width, height, grey }, boxes) {
  const ink = new Uint8Array(grey.length);
  const inRow = new Uint32Array(height);
  const inColumn = new Uint32Array(width);
  for (let y = 0, at = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1, at += 1)
      if (grey[at] < PAPER) {
        ink[at] = 1;
        inRow[y] += 1;
        inColumn[x] += 1;
      }
  for (let y = 0; y < height; y += 1) if (inRow[y] > FRAME * width) ink.fill(0, y * width, (y + 1) * width);
  for (let x = 0; x < width; x += 1)
    if (inColumn[x] > FRAME * height) for (let at = x; at < ink.length; at += width) ink[at] = 0;
  for (const { left, right, top, bottom } of boxes)
    for (let y = Math.max(0, Math.floor(top)); y < Math.min(height, Math.ceil(bottom)); y += 1)
      ink.fill(0, y * width + Math.max(0, Math.floor(left)), y * width + Math.min(width, Math.ceil(right)));
  return ink;
}

/**
 * The share of a page without ink below its last line.
 * @param {import('./ink.d.mts').Picture} picture of the page
 * @param {readonly import('./ink.d.mts').Box[]} boxes what isn't looked at: running heads, title strip; in dots
 * @param {number} floor where the page ends for what is printed on it: the upper edge of a strip along its foot; in dots
 * @returns {number} of its height, 0 to 1
 */
export function blankBelow(picture, boxes, floor = picture.height) {
  const { width, height } = picture;
  const end = Math.min(height, Math.max(0, Math.floor(floor)));
  const last = inkOf(picture, boxes).lastIndexOf(1, end * width - 1);
  return (end - (last < 0 ? 0 : Math.floor(last / width) + 1)) / height;
}

/**
 * The pictures of a stream of portable greymaps.
 * @param {Uint8Array} bytes
 * @returns {import('./ink.d.mts').Picture[]}
 */
export function greymaps(bytes) {
  const pictures = [];
  for (let at = 0; at < bytes.length;) {
    const head = /^P5\s(\d+)\s(\d+)\s255\s/.exec(String.fromCharCode(...bytes.subarray(at, at + 40)));
    if (!head) throw new Error('pdftoppm gave something else than a greymap');
    const [width, height] = [Number(head[1]), Number(head[2])];
    const begin = at + head[0].length;
    at = begin + width * height;
    pictures.push({ width, height, grey: bytes.subarray(begin, at) });
  }
  return pictures;
}
