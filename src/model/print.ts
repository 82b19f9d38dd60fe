/** The embedded fonts: their CSS with the bytes inlined, and which characters they hold. */
export interface FontKit {
  /** `@font-face` rules with `data:` sources (4 MB); `` for a page that is only printed: the printer brings the fonts itself. */
  readonly css: string;
  /** True where an embedded font has a glyph for this Unicode code point. */
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
