import { availableParallelism } from 'node:os';
import { EXIT } from '../model/exit-status.js';
import { Failure } from '../model/failure.js';
import type { Note } from '../model/open-item.js';
import type { FormFields, Measure } from '../model/print.js';
import { PRINT_MESSAGES } from '../model/messages/print.js';
import { note } from '../model/message.js';
import { countMarks } from '../model/page-mark.js';
import { startBrowser, type BrowserOptions, type RunningBrowser } from './browser.js';
import { embeddedFonts } from './fonts.js';
import { openPage, type PrintingPage } from './page.js';
import { finishPdf, type PdfMetadata } from './pdf.js';
import { timeLimit } from './time-limit.js';

/** How a printer works. */
export interface PrinterOptions extends BrowserOptions {
  /** Documents printed at the same time; default: one a core. */
  readonly pages?: number | undefined;
  /** ms that a document of nothing may take before its browser counts as hung, the more the more it holds; default 60 000. */
  readonly documentTimeout?: number | undefined;
}

/** One page of HTML and what its PDF shall say about itself. */
export interface PrintOrder {
  /** Whole in itself: fonts, styles and pictures inlined. */
  readonly html: string;
  readonly metadata: PdfMetadata;
  /** The fields that the page has room for. */
  readonly form?: FormFields | undefined;
}

/** Prints documents; the browser starts with the first. */
export interface Printer {
  /** Documents printed at the same time. */
  readonly pages: number;
  /**
   * Prints one document; several calls at once share the printer's pages.
   * @returns the bytes of the PDF, the same for the same order
   * @throws Failure where there is no browser, or the document failed twice
   */
  readonly print: (order: PrintOrder) => Promise<Uint8Array>;
  /**
   * Sets a page and measures its blocks, by the same fonts and the same browser that print them.
   * @throws Failure as for `print`
   */
  readonly measure: Measure;
}

/**
 * Documents after which a page is closed and another opened. It is swept meanwhile, and shows no leak over hundreds; a
 * page isn't kept for ever all the same, since opening one costs no more than a document or two.
 */
export const DOCUMENTS_A_PAGE = 240;
// A document whose browser fell by another document's fault is printed again; more often than this, the browser is at fault.
const ATTEMPTS = 6;

/** A running browser with its state. */
interface Session extends RunningBrowser {
  /** Set once the printer itself ended it, for a document that hung. */
  ended: boolean;
}

/**
 * Gives a printer to `use` and takes browser and pages away when it is done, however it ends.
 * @param options how to find the browser, and how much to print at a time
 * @param use what is done with the printer
 * @returns what `use` returns
 */
export async function withPrinter<T>(
  options: PrinterOptions,
  use: (printer: Printer) => Promise<T>,
): Promise<T> {
  const printer = new PagePool(options);
  try {
    return await use(printer);
  } finally {
    await printer.close();
  }
}

class Hung extends Error {}

class PagePool implements Printer {
  private session: Promise<Session> | undefined;
  private readonly idle: { page: PrintingPage; session: Session }[] = [];
  private readonly waiting: (() => void)[] = [];
  private free: number;
  private closed = false;

  readonly pages: number;

  private readonly options: PrinterOptions;

  constructor(options: PrinterOptions) {
    const told = new Set<string>();
    const onNotice = (notice: Note): void => {
      // A browser that replaces another has the same to say.
      const key = JSON.stringify([notice.code, notice.values]);
      if (told.has(key)) return;
      told.add(key);
      options.onNotice?.(notice);
    };
    this.options = { ...options, onNotice };
    this.pages = options.pages ?? availableParallelism();
    this.free = this.pages;
  }

  readonly print = async (order: PrintOrder): Promise<Uint8Array> => {
    await this.enter();
    try {
      const printed = await this.tryAgain(order.html, order.metadata.title, (page) => page.print(order.html));
      const { bytes, fonts } = finishPdf(printed, order.metadata, countMarks(order.html), order.form);
      const odd = fonts.find((font) => font.type3 || !font.embedded);
      if (odd)
        this.options.onNotice?.(
          note(PRINT_MESSAGES.fontMissing, { title: order.metadata.title, font: odd.name }),
        );
      return bytes;
    } finally {
      this.leave();
    }
  };

  readonly measure: Measure = async (html) => {
    await this.enter();
    try {
      return await this.tryAgain(html, 'Permit sheet', (page) => page.measure(html));
    } finally {
      this.leave();
    }
  };

  async close(): Promise<void> {
    this.closed = true;
    const session = await this.session?.catch(() => undefined);
    if (session) await session.end();
  }

  private async enter(): Promise<void> {
    if (this.free > 0) this.free -= 1;
    else await new Promise<void>((resolve) => this.waiting.push(resolve));
  }

  private leave(): void {
    const next = this.waiting.shift();
    if (next) next();
    else this.free += 1;
  }

  /** Prints or measures; a document whose page or browser goes away is tried once more in a new one. */
  private async tryAgain<T>(
    html: string,
    title: string,
    use: (page: PrintingPage) => Promise<T>,
  ): Promise<T> {
    let faults = 0;
    for (let attempt = 1; ; attempt += 1) {
      const session = await this.running();
      try {
        return await this.tryOnce(html, session, use);
      } catch (error) {
        if (this.closed) throw error;
        const innocent = session.ended && !(error instanceof Hung);
        if (!innocent) faults += 1;
        if (error instanceof Hung || !session.browser.connected) await this.replace(session);
        if (faults < 2 && attempt < ATTEMPTS) continue;
        const because =
          error instanceof Hung ? 'the browser took longer than is allowed' : 'the browser gave up';
        const detail = error instanceof Error ? (error.message.split('\n')[0] ?? '') : String(error);
        const told = note(PRINT_MESSAGES.notPrinted, { title, because, detail });
        throw new Failure(told, EXIT.failed, { cause: error });
      }
    }
  }

  private async tryOnce<T>(
    html: string,
    session: Session,
    use: (page: PrintingPage) => Promise<T>,
  ): Promise<T> {
    const limit = timeLimit(html, this.options.documentTimeout ?? 60_000);
    let timer: NodeJS.Timeout | undefined;
    const hung = new Promise<never>((_, reject) => {
      timer = setTimeout(() => {
        reject(new Hung(`more than ${limit} ms`));
      }, limit);
    });
    let page: PrintingPage | undefined;
    try {
      const work = async (): Promise<T> => {
        page = await this.pageOf(session);
        return use(page);
      };
      const result = await Promise.race([work(), hung]);
      this.giveBack(page, session);
      return result;
    } catch (error) {
      void page?.close();
      throw error;
    } finally {
      clearTimeout(timer);
    }
  }

  private async pageOf(session: Session): Promise<PrintingPage> {
    for (let idle = this.idle.pop(); idle; idle = this.idle.pop()) {
      if (idle.session === session) return idle.page;
    }
    return openPage(session.browser, await embeddedFonts());
  }

  private giveBack(page: PrintingPage | undefined, session: Session): void {
    if (!page) return;
    if (page.printed() < DOCUMENTS_A_PAGE) this.idle.push({ page, session });
    else void page.close();
  }

  private async running(): Promise<Session> {
    // Whoever still waits for a page when the printer is taken away must not start a browser that nobody ends.
    if (this.closed) throw new Error('the printer was closed');
    this.session ??= startBrowser(this.options).then((running) => ({ ...running, ended: false }));
    const session = await this.session;
    if (session.browser.connected && !session.ended) return session;
    await this.replace(session);
    return this.running();
  }

  /** Ends a browser that crashed or hangs; whoever asks next starts another. */
  private async replace(session: Session): Promise<void> {
    const current = await this.session?.catch(() => undefined);
    if (current === session) this.session = undefined;
    session.ended = true;
    await session.end();
  }
}
