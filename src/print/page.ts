import type { Browser, Page } from 'puppeteer-core';
import { partedFromPictures, type Parted } from './carried-pictures.js';
import type { FontFaceSource } from './fonts.js';
import type { MeasuredBlock } from '../model/print.js';
import { MEASURING_SCRIPT } from './measured-blocks.js';

/** Documents after which a page is rid of what they left: it then stays below 250 MB. */
const DOCUMENTS_A_SWEEP = 12;

/** One page of the browser that prints documents, one after another. */
export interface PrintingPage {
  /** Documents printed so far. */
  readonly printed: () => number;
  /**
   * Prints one page of HTML.
   * @throws Error where the page or the browser goes away meanwhile
   */
  readonly print: (html: string) => Promise<Uint8Array>;
  /**
   * Sets one page of HTML and measures its elements with `data-block`.
   * @throws Error where the page or the browser goes away meanwhile
   */
  readonly measure: (html: string) => Promise<readonly MeasuredBlock[]>;
  /** Closes the page; never fails. */
  readonly close: () => Promise<void>;
}

/**
 * Opens a page that runs no script of its document, reaches no network and has the embedded fonts loaded.
 * The fonts are loaded by the page, not by each document: decoding 4 MB of them takes 400 ms, and they stay while
 * one document after another is put in.
 * @param browser the browser
 * @param faces the fonts to load
 * @param fontCss the rules that a stand-alone page has for those fonts: left out of what is printed
 */
export async function openPage(
  browser: Browser,
  faces: readonly FontFaceSource[],
  fontCss: string,
): Promise<PrintingPage> {
  const page = await browser.newPage();
  // How long a document may take is for the printer to say, which sees to it that a browser that hangs is replaced.
  page.setDefaultTimeout(0);
  await page.setJavaScriptEnabled(false);
  await page.setRequestInterception(true);
  let pictures: Parted['pictures'] = new Map();
  page.on('request', (request) => {
    const picture = pictures.get(request.url());
    // A document is whole in itself: whatever asks for a file or a host is refused.
    if (picture)
      void request.respond({ contentType: picture.type, body: picture.body }).catch(() => undefined);
    else if (request.url().startsWith('data:')) void request.continue().catch(() => undefined);
    // `aborted` leaves the page where it is; any other reason would put the browser's own error page in its place.
    else void request.abort('aborted').catch(() => undefined);
  });
  const gone = new Promise<never>((_, reject) => {
    page.once('error', reject);
    page.once('close', () => {
      reject(new Error('the page was closed'));
    });
  });
  gone.catch(() => undefined);
  const home = page.url();
  await Promise.race([loadFonts(page, faces), gone]);
  const session = await page.createCDPSession();
  let printed = 0;
  const put = async (html: string, more: (html: string) => string): Promise<void> => {
    // What earlier documents left would else be kept until it fills most of a gigabyte.
    if (printed > 0 && printed % DOCUMENTS_A_SWEEP === 0) await session.send('HeapProfiler.collectGarbage');
    printed += 1;
    const parted = partedFromPictures(html);
    pictures = parted.pictures;
    await page.setContent(more(withoutFontCss(parted.html, fontCss)), { waitUntil: 'load', timeout: 0 });
  };
  // A document that leads the page elsewhere would print as something else.
  const stayed = (): void => {
    if (page.url() !== home) throw new Error(`the document led the page to ${page.url().slice(0, 60)}`);
  };
  const print = async (html: string): Promise<Uint8Array> => {
    await put(html, unpainted);
    const pdf = await page.pdf({
      preferCSSPageSize: true,
      printBackground: true,
      tagged: true,
      outline: true,
      timeout: 0,
    });
    stayed();
    return pdf;
  };
  const measure = async (html: string): Promise<readonly MeasuredBlock[]> => {
    await put(html, (whole) => whole);
    const measured = (await page.evaluate(MEASURING_SCRIPT)) as readonly MeasuredBlock[];
    stayed();
    return measured;
  };
  return {
    printed: () => printed,
    print: (html) => Promise.race([print(html), gone]),
    measure: (html) => Promise.race([measure(html), gone]),
    close: () => page.close().catch(() => undefined),
  };
}

/** The page is printed and never looked at: laying it out and painting it for the screen first is a fifth of the work. */
function unpainted(html: string): string {
  return html.replace('<head>', '<head><style>@media screen{html{display:none!important}}</style>');
}

function withoutFontCss(html: string, fontCss: string): string {
  const at = html.indexOf(fontCss);
  return at < 0 ? html : html.slice(0, at) + html.slice(at + fontCss.length);
}

/**
 * Loads fonts into a page, where they stay while one document after another is put in.
 * @param page of the browser
 * @param faces the fonts to load
 * @throws Error where the page loaded not all of them
 */
export async function loadFonts(page: Page, faces: readonly FontFaceSource[]): Promise<void> {
  // This runs in the page by the browser's own protocol; scripts of documents stay off. It is text, since the
  // types of a page's objects are none of this program's.
  const script = `(async () => {
    for (const face of ${JSON.stringify(faces)}) {
      const bytes = Uint8Array.fromBase64?.(face.base64) ?? Uint8Array.from(atob(face.base64), (c) => c.charCodeAt(0));
      const font = new FontFace(face.family, bytes.buffer, { weight: face.weight });
      await font.load();
      document.fonts.add(font);
    }
    return document.fonts.size;
  })()`;
  const loaded = await page.evaluate(script);
  if (loaded !== faces.length) throw new Error(`the page loaded ${String(loaded)} of ${faces.length} fonts`);
}
