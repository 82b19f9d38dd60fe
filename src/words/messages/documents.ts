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
  says(documentMessages.noTemplates, {
    title: 'The folder of templates is not there',
    message: (p) => `There is no folder ${p.folder} of templates.`,
    found: (p) => p.folder,
    expected: 'a folder whose files go before those of shuntbook, by the same relative paths',
    hint: 'Correct --templates, or leave it out.',
  }),
  says(documentMessages.templateUnknown, {
    title: 'A template that nothing uses',
    message: (p) =>
      `No template of shuntbook is called ${p.file}${p.nearest === '' ? '' : `; the nearest is ${p.nearest}`}.`,
    found: (p) => p.file,
    expected: 'the relative path of a template, partial or style of shuntbook',
    hint: 'Rename it, or take it out of the templates folder.',
  }),
  says(documentMessages.templateReplaced, {
    title: 'A template of an earlier shuntbook',
    message: (p) => `The template ${p.file} is used no more: ${p.instead}.`,
    found: (p) => p.file,
    expected: 'the templates of this shuntbook',
    hint: 'Put what you had changed there, and take the old file out of the templates folder.',
  }),
  says(documentMessages.view, {
    title: 'A document lacks a value',
    message: (p) => `The ${p.document} can’t be drawn up: ${p.reason}`,
    found: (p) => p.reason,
    expected: 'a view model that satisfies its schema (docs/view-models/)',
    hint: 'Report this fault of shuntbook together with the plan.json of the job.',
  }),
];
