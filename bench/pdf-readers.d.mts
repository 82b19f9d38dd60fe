export { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
export { PDFParse } from 'pdf-parse';
