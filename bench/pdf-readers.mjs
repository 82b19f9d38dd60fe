import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';

// Both readers bring JavaScript of their own for what Node has, made for engines that haven't: with it whatever else this process
// does (a browser's answers are JSON, megabytes of it) takes several times as long. What Node has is put back.
const REPLACED = [
  [JSON, 'parse'],
  [Array.prototype, 'push'],
  [Function.prototype, 'toString'],
  // Whoever finds it believes that it is the engine's own, and takes it for what has ways that are faster.
  [Uint8Array, 'fromBase64'],
];
const own = REPLACED.map(([of, name]) => Object.getOwnPropertyDescriptor(of, name));

export const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
// The first document would else load it, and with it the same again.
const worker = createRequire(import.meta.url).resolve('pdfjs-dist/legacy/build/pdf.worker.mjs');
await import(pathToFileURL(worker).href);
export const { PDFParse } = await import('pdf-parse');

for (const [index, [of, name]] of REPLACED.entries()) {
  const before = own[index];
  if (before) Object.defineProperty(of, name, before);
  else Reflect.deleteProperty(of, name);
}
