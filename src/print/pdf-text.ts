/** A text string of a PDF: plain ASCII in brackets, all else as UTF-16 in hex digits (ISO 32000-1, 7.9.2.2). */
export function pdfText(text: string): string {
  if (/^[\x20-\x7e]*$/.test(text)) return `(${text.replace(/[\\()]/g, '\\$&')})`;
  return `<FEFF${Buffer.from(text, 'utf16le').swap16().toString('hex').toUpperCase()}>`;
}
