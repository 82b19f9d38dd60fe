import type { PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { getDocument } from '../../bench/pdf-readers.mjs';

/** A piece of text where it was printed; points, y up from the lower edge of the page. */
export interface PrintedText {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
  readonly size: number;
  /** Roles of the tags around it, from the outermost; a row of header cells alone is `HeadRow`. */
  readonly roles: readonly string[];
  /** The marked content that it belongs to; `` for what no tag holds, such as the margins. */
  readonly content: string;
}

/** A font as its page uses it. */
export interface PrintedFont {
  readonly name: string;
  /** False where a reader must find the font elsewhere. */
  readonly embedded: boolean;
  readonly type3: boolean;
}

/** A node of the tag tree; a leaf has no role. */
export interface TagNode {
  readonly role?: string;
  /** Of a leaf: the marked content that it stands for. */
  readonly id?: string;
  readonly alt?: string;
  readonly children?: readonly TagNode[];
}

/** One page of a PDF as it reads back. */
export interface PrintedPage {
  readonly width: number;
  readonly height: number;
  readonly texts: readonly PrintedText[];
  readonly tags: TagNode;
  /** All text of the page in reading order, NFKC. */
  readonly text: string;
  readonly annotations: number;
  readonly fonts: readonly PrintedFont[];
}

/** A PDF as it reads back. */
export interface PrintedDocument {
  readonly pages: readonly PrintedPage[];
  readonly bookmarks: number;
  readonly hasLayers: boolean;
}

/** The roles around each piece of marked content, from the outermost. */
function rolesByContent(root: TagNode): Map<string, readonly string[]> {
  const found = new Map<string, readonly string[]>();
  const walk = (node: TagNode, above: readonly string[]): void => {
    if (node.id !== undefined) found.set(node.id, above);
    const isHead = node.role === 'TR' && (node.children ?? []).every((c) => c.role === 'TH');
    const roles = node.role === undefined ? above : [...above, isHead ? 'HeadRow' : node.role];
    for (const child of node.children ?? []) walk(child, roles);
  };
  walk(root, []);
  return found;
}

/**
 * The fonts that a page sets its text in, as the reader loads them from the file.
 * @param names what the reader calls them, one name for one font in the whole document
 */
async function fontsOf(page: PDFPageProxy, names: ReadonlySet<string>): Promise<PrintedFont[]> {
  // Only drawing a page loads its fonts, and takes longer than all else: not done where earlier pages loaded them.
  if ([...names].some((name) => !page.commonObjs.has(name))) await page.getOperatorList();
  return [...names].map((name) => {
    const font = page.commonObjs.get(name) as {
      readonly name: string;
      readonly missingFile: boolean;
      readonly isType3Font: boolean;
    };
    return { name: font.name, embedded: !font.missingFile, type3: font.isType3Font };
  });
}

/**
 * Reads a PDF back: text with its places, tags, bookmarks.
 * @param bytes of the file
 */
export async function readPrinted(bytes: Uint8Array): Promise<PrintedDocument> {
  const task = getDocument({ data: Uint8Array.from(bytes), verbosity: 0, useSystemFonts: false });
  const pdf = await task.promise;
  const pages: PrintedPage[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const content = await page.getTextContent({ includeMarkedContent: true });
    const tags = ((await page.getStructTree()) as TagNode | null) ?? { role: 'Root', children: [] };
    const rolesOf = rolesByContent(tags);
    const { width, height } = page.getViewport({ scale: 1 });
    const texts: PrintedText[] = [];
    const around: string[] = [];
    const fontNames = new Set<string>();
    let text = '';
    for (const item of content.items) {
      if (!('str' in item)) {
        if (item.type === 'endMarkedContent') around.pop();
        else around.push((item as { readonly id?: string }).id ?? '');
        continue;
      }
      text += item.str + (item.hasEOL ? '\n' : '');
      if (item.str.trim() === '') continue;
      fontNames.add(item.fontName);
      const [, , , size = 0, x = 0, y = 0] = item.transform as number[];
      const box = { left: x, right: x + item.width, bottom: y - 0.2 * size, top: y + 0.72 * size };
      const inside = around.at(-1) ?? '';
      texts.push({ text: item.str, ...box, size, roles: rolesOf.get(inside) ?? [], content: inside });
    }
    const annotations = (await page.getAnnotations()).length;
    const fonts = await fontsOf(page, fontNames);
    pages.push({ width, height, texts, tags, text: text.normalize('NFKC'), annotations, fonts });
  }
  const outline = (await pdf.getOutline()) as readonly { items: readonly unknown[] }[] | null;
  const count = (nodes: readonly { items: readonly unknown[] }[]): number =>
    nodes.reduce((sum, n) => sum + 1 + count(n.items as readonly { items: readonly unknown[] }[]), 0);
  const layers = await pdf.getOptionalContentConfig();
  const hasLayers = [...layers].length > 0;
  await task.destroy();
  return { pages, bookmarks: outline === null ? 0 : count(outline), hasLayers };
}

/** The marked content of a node, in reading order. */
export function contentOf(node: TagNode): string[] {
  return node.id === undefined ? (node.children ?? []).flatMap(contentOf) : [node.id];
}

/** All nodes of a role, in reading order. */
export function nodesOf(node: TagNode, isWanted: (role: string) => boolean): TagNode[] {
  const own = node.role !== undefined && isWanted(node.role) ? [node] : [];
  return [...own, ...(node.children ?? []).flatMap((c) => nodesOf(c, isWanted))];
}
