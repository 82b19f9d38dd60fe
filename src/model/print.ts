/** The embedded fonts: their CSS with the bytes inlined, and which characters they hold. */
export interface FontKit {
  /**
   * `@font-face` rules with `data:` sources for what a page needs to stand alone; `` for a page that is only printed: the
   * printer brings the fonts itself.
   * @param html the page; families that it names and characters that it holds decide which files are in the rules
   */
  css(html: string): string;
  /** True where the fonts have a glyph for this Unicode code point in every family and weight. */
  covers(codePoint: number): boolean;
}

/** What a PDF says of itself. */
export interface DocumentMetadata {
  readonly title: string;
  readonly author: string;
  readonly subject: string;
  readonly keywords: readonly string[];
  /** BCP 47 tag, `en`, `es`. */
  readonly language: string;
  /** Ids of the places that a table of contents names, whose page numbers stand in the end where the page has its marks. */
  readonly contents?: readonly string[];
}

/** A field of a form that is filled in on a screen. */
export interface FormField {
  /** Parts of its name are separated by full stops: `P-3.serial`. Its place is the link to `field:P-3.serial` of the page. */
  readonly name: string;
  /** What a reader says of it, to whoever doesn't see the page. */
  readonly tooltip: string;
  /** What is chosen from: the value that is kept, and how it is shown; none: text. */
  readonly options: readonly { readonly value: string; readonly shows: string }[];
  /** True where words of one's own will do too. */
  readonly free: boolean;
}

/** What a form carries unseen: who reads it back knows from it what was asked. */
export interface HiddenField {
  readonly name: string;
  readonly value: string;
}

/** The fields of a document, in the order in which they are filled in. */
export interface FormFields {
  readonly fields: readonly FormField[];
  readonly hidden: readonly HiddenField[];
}

/** One document as self-contained HTML (fonts, styles and pictures inlined, no script), ready to print. */
export interface RenderedDocument {
  /** ASCII, `closeout-pack.pdf`. */
  readonly fileName: string;
  readonly html: string;
  readonly metadata: DocumentMetadata;
  /** Of a form. */
  readonly form?: FormFields;
}

/** A piece that never goes apart: a row of a table, an entry of a list, a paragraph. */
export interface MeasuredRow {
  readonly html: string;
  /** mm, with what stands between it and the next. */
  readonly height: number;
}

/** What follows each other in a block: a heading, a paragraph, or a table or list that can go on elsewhere after any of its rows. */
export interface MeasuredGroup {
  readonly kind: 'heading' | 'text' | 'table' | 'list';
  /** The words of a heading; else ``. */
  readonly words: string;
  /** Markup around the rows: the table with its head and the widths of its columns; `` around a heading or paragraph. */
  readonly open: string;
  readonly close: string;
  /** mm; head of a table with what stands above it, and what stands below its last row. */
  readonly head: number;
  readonly tail: number;
  readonly rows: readonly MeasuredRow[];
}

/** A block as the browser set it at one width. */
export interface MeasuredBlock {
  /** Its `data-block`. */
  readonly name: string;
  /** False where something in it is wider than the block. */
  readonly fits: boolean;
  readonly groups: readonly MeasuredGroup[];
}

/**
 * Sets a page of HTML in the browser and measures its elements with `data-block`.
 * @param html whole in itself, as for printing
 * @returns one entry an element, in their order
 */
export type Measure = (html: string) => Promise<readonly MeasuredBlock[]>;
