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
}

/** One document as self-contained HTML (fonts, styles and pictures inlined, no script), ready to print. */
export interface RenderedDocument {
  /** ASCII, `closeout-pack.pdf`. */
  readonly fileName: string;
  readonly html: string;
  readonly metadata: DocumentMetadata;
}
