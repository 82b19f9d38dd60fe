/** A PDF that can be put behind another one. */
export interface WholePdf {
  readonly bytes: Uint8Array;
  readonly pages: number;
}

/** Why a file can't be put behind another one. */
export type PdfFault = 'no-pdf' | 'locked' | 'broken' | 'empty';

/**
 * Looks whether a file is a PDF whose pages can be taken.
 * @param bytes of the file
 * @returns the file with its number of pages, or why it can't be taken; never throws
 */
export async function wholePdf(bytes: Uint8Array): Promise<WholePdf | { readonly fault: PdfFault }> {
  if (!Buffer.from(bytes.subarray(0, 1024)).toString('latin1').includes('%PDF-')) return { fault: 'no-pdf' };
  const { PDFDocument } = await import('@cantoo/pdf-lib');
  try {
    const read = await PDFDocument.load(bytes, { updateMetadata: false, ignoreEncryption: true });
    if (read.isEncrypted) return { fault: 'locked' };
    const pages = read.getPageCount();
    if (pages === 0) return { fault: 'empty' };
    // A page that can't be copied is found here, and not when the appendix is made.
    const trial = await PDFDocument.create({ updateMetadata: false });
    await trial.copyPages(read, read.getPageIndices());
    return { bytes, pages };
  } catch {
    return { fault: 'broken' };
  }
}

/**
 * Puts the pages of other PDFs behind those of one, which keeps its tags, its outline and what it says of itself; what the others
 * have of links and scripts is left behind.
 * @param first a PDF of ours
 * @param others in their order
 * @throws Error where one of them can't be read
 */
export async function appendPdfs(first: Uint8Array, others: readonly WholePdf[]): Promise<Uint8Array> {
  if (others.length === 0) return first;
  const { PDFDocument, PDFName } = await import('@cantoo/pdf-lib');
  const whole = await PDFDocument.load(first, { updateMetadata: false });
  for (const { bytes } of others) {
    const other = await PDFDocument.load(bytes, { updateMetadata: false });
    for (const page of await whole.copyPages(other, other.getPageIndices())) {
      for (const key of ['Annots', 'AA', 'StructParents']) page.node.delete(PDFName.of(key));
      whole.addPage(page);
    }
  }
  return whole.save({ useObjectStreams: true, addDefaultPage: false, updateFieldAppearances: false });
}
