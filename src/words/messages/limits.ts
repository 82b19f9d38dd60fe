import { LIMIT_MESSAGES } from '../../model/messages/limits.js';
import { says } from '../message-kit.js';

const SPLIT = 'Give the site as several jobs.';

/** Words of the messages of model/messages/limits.ts. */
export const LIMIT_WORDS = [
  says(LIMIT_MESSAGES.jobRows, {
    title: 'A job has more rows than are planned',
    message: (p) => `Job ${p.job} has ${p.rows} rows: a job of more than ${p.most} isn’t planned.`,
    found: (p) => `${p.rows} rows`,
    expected: (p) => `at most ${p.most} rows, a quantity counted as so many`,
    hint: `Check that the job column tells the jobs apart. ${SPLIT}`,
  }),
  says(LIMIT_MESSAGES.jobHousings, {
    title: 'A job asks for more protectors than are planned',
    message: (p) =>
      `Job ${p.job} asks for more than ${p.most} housings of protectors: such a job isn’t planned.`,
    found: (p) => `more than ${p.most} housings`,
    expected: (p) => `at most ${p.most} housings`,
    hint: SPLIT,
  }),
  says(LIMIT_MESSAGES.jobRuns, {
    title: 'The runs of a job follow more connections than are planned',
    message: (p) =>
      `The runs of job ${p.job} follow more than ${p.most} connections through transfer switches and onto DC inputs: such a job isn’t planned.`,
    found: (p) => `more than ${p.most} connections`,
    expected: (p) => `at most ${p.most} connections`,
    hint: `Check connects_to of what is on transfer switches and DC inputs. ${SPLIT}`,
  }),
  says(LIMIT_MESSAGES.jobs, {
    title: 'The lists hold more jobs than a run makes',
    message: (p) => `The lists hold ${p.jobs} jobs: a run of more than ${p.most} isn’t begun.`,
    found: (p) => `${p.jobs} jobs`,
    expected: (p) => `at most ${p.most} jobs`,
    hint: 'Give the lists in several runs, each with its own --out.',
  }),
  says(LIMIT_MESSAGES.cell, {
    title: 'A cell is larger than is read',
    message: (p) =>
      `${p.field}: the cell has ${p.characters} characters; one of more than ${p.most} isn’t read.`,
    found: (p) => `${p.characters} characters`,
    expected: (p) => `at most ${p.most} characters`,
    hint: 'Correct the cell; a quotation mark that is never closed takes in all that follows.',
  }),
];
