/** The columns of `questions.csv`, which a file of answers has too; further ones don't count. */
export const QUESTION_COLUMNS = [
  'job',
  'tag',
  'field',
  'code',
  'question',
  'found',
  'expected',
  'example',
  'file',
  'line',
  'answer',
  'by',
  'date',
] as const;
export type QuestionColumn = (typeof QUESTION_COLUMNS)[number];

/** The word that settles what is to be confirmed. */
export const ACCEPT = 'accept';
