/** A document whose large pictures are handed to the page one by one. */
export interface Parted {
  /** The document, with an address of our own in place of each of them. */
  readonly html: string;
  /** The picture behind each address. */
  readonly pictures: ReadonlyMap<string, Picture>;
}

/** A picture as the page is given it. */
export interface Picture {
  readonly type: string;
  readonly body: Buffer;
}

/** Characters: a message to the browser may hold some hundred million, so a document of many pictures goes in several. */
const LARGE = 2_000_000;
/** No host has such a name (RFC 2606), and whatever else asks for it is refused. */
const OURS = 'http://picture.invalid/';
const START = /src="data:(image\/(?:png|jpeg));base64,/g;

/**
 * Takes the large pictures out of a document.
 * @param html whole in itself
 */
export function partedFromPictures(html: string): Parted {
  const pictures = new Map<string, Picture>();
  const kept: string[] = [];
  let from = 0;
  for (const match of html.matchAll(START)) {
    const start = match.index + match[0].length;
    const end = html.indexOf('"', start);
    if (end - start < LARGE) continue;
    const address = `${OURS}${pictures.size}`;
    // A template may write the signs that fill base64 up as `&#x3D;`.
    const base64 = html.slice(start, end).replace(/(?:=|&#x3D;)+$/, '');
    pictures.set(address, { type: match[1] ?? '', body: Buffer.from(base64, 'base64') });
    kept.push(html.slice(from, match.index), `src="${address}`);
    from = end;
  }
  return { html: [...kept, html.slice(from)].join(''), pictures };
}
