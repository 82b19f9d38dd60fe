import { message } from '../message.js';

/** Messages of printing: the browser, its sandbox, a document that can't be printed. */
export const PRINT_MESSAGES = {
  noBrowser: message<{ tried: readonly string[] }>('print/no-browser', 'conflict', 'office'),
  browserSubstituted: message<{ tried: readonly string[]; used: string }>(
    'print/other-browser',
    'confirm',
    'office',
  ),
  sandboxOff: message<{ root: boolean }>('print/no-sandbox', 'confirm', 'office'),
  notPrinted: message<{ title: string; because: string; detail: string }>(
    'print/document-failed',
    'conflict',
    'office',
  ),
  fontMissing: message<{ title: string; font: string }>('print/font-missing', 'confirm', 'office'),
  cacheRefused: message<{ folder: string; because: string }>('print/cache-refused', 'conflict', 'office'),
} as const;
