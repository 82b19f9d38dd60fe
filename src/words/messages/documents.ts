import { documentMessages } from '../../model/messages/documents.js';
import { says } from '../message-kit.js';

/** Words of the messages of model/messages/documents.ts. */
export const DOCUMENTS_WORDS = [
  says(documentMessages.template, {
    title: 'A template fails',
    message: (p) => `The template ${p.file} can’t be used: ${p.reason}`,
    found: (p) => p.file,
    expected: 'a handlebars template that uses only what its view model holds (docs/view-models/)',
    hint: 'Correct the file, or take it out of the templates folder so that the shipped one is used.',
  }),
  says(documentMessages.view, {
    title: 'A document lacks a value',
    message: (p) => `The ${p.document} can’t be drawn up: ${p.reason}`,
    found: (p) => p.reason,
    expected: 'a view model that satisfies its schema (docs/view-models/)',
    hint: 'Report this fault of shuntbook together with the plan.json of the job.',
  }),
];
