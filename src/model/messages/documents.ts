import { message } from '../message.js';

/** What the documents have to say to whoever changes a template. */
export const documentMessages = {
  template: message<{ file: string; reason: string }>('documents/template', 'conflict', 'office'),
  noTemplates: message<{ folder: string }>('documents/no-templates', 'conflict', 'office'),
  templateUnknown: message<{ file: string; nearest: string }>(
    'documents/template-unknown',
    'conflict',
    'office',
  ),
  templateReplaced: message<{ file: string; instead: string }>(
    'documents/template-replaced',
    'conflict',
    'office',
  ),
  view: message<{ document: string; reason: string }>('documents/view-model', 'conflict', 'office'),
} as const;
