/** A page as a picture: a byte a dot, row by row, 255 white. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

/** In dots, from the upper left corner. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The share of a page's height without ink below its last line; what lies in the boxes or below the floor isn't looked at. */
export function blankBelow(picture: Picture, boxes: readonly Box[], floor?: number): number;

/** The pictures of a stream of portable greymaps. */
export function greymaps(bytes: Uint8Array): Picture[];
