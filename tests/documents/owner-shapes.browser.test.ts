import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { flagSymbol, lightSymbol } from '../../src/documents/drawing/lights.js';
import { startBrowser, type RunningBrowser } from '../../src/print/browser.js';
import { COLOUR_NAMES } from '../../src/words/colours.js';
import type { PlainLook } from '../../src/words/languages/owner-strings.js';

const LOOKS: readonly PlainLook[] = ['lit', 'dark', 'flickers', 'either'];
const SIZE = 60;
/** Pixels of 3600 in which two pictures differ at least: more than a stroke of another width would make. */
const LEAST = 60;

/** What draws a picture in black and white, one character a pixel. */
type InBlackAndWhite = (symbol: string) => Promise<string>;

let running: RunningBrowser;
let printed: InBlackAndWhite;

beforeAll(async () => {
  running = await startBrowser();
  const page = await running.browser.newPage();
  printed = async (symbol) => {
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${SIZE}" height="${SIZE}">${symbol}</svg>`;
    const source = `data:image/svg+xml;base64,${Buffer.from(svg).toString('base64')}`;
    const bits: unknown = await page.evaluate(`new Promise((resolve, reject) => {
      const image = new Image();
      image.onerror = () => reject(new Error('not an image'));
      image.onload = () => {
        const canvas = document.createElement('canvas');
        canvas.width = canvas.height = ${SIZE};
        const paper = canvas.getContext('2d');
        paper.fillStyle = '#fff';
        paper.fillRect(0, 0, ${SIZE}, ${SIZE});
        paper.drawImage(image, 0, 0);
        const { data } = paper.getImageData(0, 0, ${SIZE}, ${SIZE});
        let bits = '';
        for (let at = 0; at < data.length; at += 4)
          bits += 0.299 * data[at] + 0.587 * data[at + 1] + 0.114 * data[at + 2] < 128 ? '#' : '.';
        resolve(bits);
      };
      image.src = '${source}';
    })`);
    return String(bits);
  };
});
afterAll(() => running.end());

function differing(one: string, other: string): number {
  return [...one].filter((bit, at) => bit !== other[at]).length;
}

/** Names of those of some pictures that differ by too little from another. */
async function alike(pictures: ReadonlyMap<string, string>): Promise<string[]> {
  const drawn = await Promise.all(
    [...pictures].map(async ([name, symbol]) => ({ name, bits: await printed(symbol) })),
  );
  for (const { bits } of drawn) expect(bits).toContain('#');
  return drawn.flatMap((one, index) =>
    drawn
      .slice(index + 1)
      .flatMap((other) => (differing(one.bits, other.bits) < LEAST ? [`${one.name} as ${other.name}`] : [])),
  );
}

describe('in black and white, one bit a pixel', () => {
  it('on, off, blinking and either are told apart in every colour, and across colours', async () => {
    const lights = COLOUR_NAMES.flatMap((colour) =>
      LOOKS.map((look) => [`${look} ${colour}`, lightSymbol(30, 30, look, colour)] as const),
    );
    const mixed = (await alike(new Map(lights))).filter((pair) => {
      const [one = '', other = ''] = pair.split(' as ');
      return one.split(' ')[0] !== other.split(' ')[0];
    });
    expect(mixed).toEqual([]);
  });

  it('a good flag and a used-up one are told apart, whatever their colours', async () => {
    const flags = COLOUR_NAMES.flatMap((colour) =>
      (['good', 'used'] as const).map(
        (look) => [`${look} ${colour}`, flagSymbol(20, 15, look, colour)] as const,
      ),
    );
    const mixed = (await alike(new Map(flags))).filter((pair) =>
      /^good.* as used|^used.* as good/.test(pair),
    );
    expect(mixed).toEqual([]);
  });

  it('one picture is as itself: the measure can tell that two are alike', async () => {
    const lit = lightSymbol(30, 30, 'lit', 'blue');
    expect(
      await alike(
        new Map([
          ['one', lit],
          ['other', lit],
        ]),
      ),
    ).toEqual(['one as other']);
  });
});
