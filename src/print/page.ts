import type { Browser, Page } from 'puppeteer-core';
import type { FontKit, MeasuredBlock } from '../model/print.js';
import { partedFromPictures, type Parted } from './carried-pictures.js';
import type { EmbeddedFonts, FontFaceSource } from './fonts.js';
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
 * Opens a page that runs no script of its document, reaches no network and loads the embedded fonts.
 * A font is loaded by the page before the first document that needs it, not by each document: decoding 3 MB takes
 * 300 ms, and they stay while one document after another is put in.
 * @param browser the browser
 * @param fonts what documents may be set in
 */
export async function openPage(browser: Browser, fonts: EmbeddedFonts): Promise<PrintingPage> {
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
  const session = await page.createCDPSession();
  const loaded = new Set<FontFaceSource>();
  const loadFontsOf = async (html: string): Promise<void> => {
    const missing = fonts.facesFor(html).filter((face) => !loaded.has(face));
    if (missing.length === 0) return;
    for (const face of missing) loaded.add(face);
    await loadFonts(page, missing);
  };
  let printed = 0;
  const put = async (html: string, more: (html: string) => string): Promise<void> => {
    // What earlier documents left would else be kept until it fills most of a gigabyte.
    if (printed > 0 && printed % DOCUMENTS_A_SWEEP === 0) await session.send('HeapProfiler.collectGarbage');
    printed += 1;
    const parted = partedFromPictures(html);
    pictures = parted.pictures;
    const bare = withoutFontCss(parted.html, fonts.standAloneKit);
    await loadFontsOf(bare);
    await page.setContent(more(bare), { waitUntil: 'load', timeout: 0 });
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

/** A page that stands alone brings its fonts; here they are loaded already. */
function withoutFontCss(html: string, standAlone: FontKit): string {
  if (!html.includes('@font-face')) return html;
  return standAlone
    .css(html)
    .split('\n')
    .reduce((text, rule) => text.replace(rule, ''), html);
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
    const before = document.fonts.size;
    for (const { family, base64, format, ...descriptors } of ${JSON.stringify(faces)}) {
      const bytes = Uint8Array.fromBase64?.(base64) ?? Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
      const font = new FontFace(family, bytes.buffer, descriptors);
      await font.load();
      document.fonts.add(font);
    }
    return document.fonts.size - before;
  })()`;
  const loaded = await page.evaluate(script);
  if (loaded !== faces.length) throw new Error(`the page loaded ${String(loaded)} of ${faces.length} fonts`);
}
