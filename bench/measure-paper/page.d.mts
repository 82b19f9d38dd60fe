/** A piece of text as it is printed: on one line, in one font and size. Lengths in points from the upper left corner. */
export interface Text {
  readonly text: string;
  /** Real height of its type, after every transform. */
  readonly size: number;
  /** Degrees against the sheet, counterclockwise. */
  readonly angle: number;
  /** Length along its line. */
  readonly along: number;
  /** Where its line begins. */
  readonly origin: { readonly x: number; readonly y: number };
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly font: string;
  /** Texts that one piece of the document's source became have one number; 0: a running head, which no structure holds. */
  readonly group: number;
  /** The structure from the document down: `Document`, `Table`, `TR`, `TD`. */
  readonly roles: readonly string[];
  /** Which child each of them is. */
  readonly path: readonly number[];
}

/** A page as it is printed. */
export interface Page {
  readonly width: number;
  readonly height: number;
  /** Points to a CSS pixel for most of its text; null where it has none. */
  readonly scale: number | null;
  readonly texts: readonly Text[];
}

/** What a page breaks, and which line of the design asks for it. */
export interface Finding {
  readonly found: string;
  readonly asks: string;
}
