import type { MessageEntry } from '../message-kit.js';

/** What the documents have to say to whoever changes a template. */
export const documentMessages = {
  template: {
    code: 'documents/template',
    severity: 'conflict',
    title: 'A template fails',
    message: (p: { file: string; reason: string }) => `The template ${p.file} can't be used: ${p.reason}`,
    found: (p) => p.file,
    expected: 'a handlebars template that uses only what its view model holds (docs/view-models/)',
    hint: 'Correct the file, or take it out of the templates folder so that the shipped one is used.',
    who: 'office',
  } satisfies MessageEntry<{ file: string; reason: string }>,
  view: {
    code: 'documents/view-model',
    severity: 'conflict',
    title: 'A document lacks a value',
    message: (p: { document: string; reason: string }) => `The ${p.document} can't be drawn up: ${p.reason}`,
    found: (p) => p.reason,
    expected: 'a view model that satisfies its schema (docs/view-models/)',
    hint: 'Report this fault of shuntbook together with the plan.json of the job.',
    who: 'office',
  } satisfies MessageEntry<{ document: string; reason: string }>,
};
