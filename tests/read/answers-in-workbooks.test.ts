import { expect, it } from 'vitest';
import { odsParts, odsTable, sheetData, xlsxParts, zipOf, type GridCell } from '../../bench/workbooks.mjs';
import { defaultSettings } from '../../src/model/settings.js';
import { readListContents } from '../../src/read/list/lists.js';

const settings = defaultSettings();
const LIST = {
  name: 'list.csv',
  content: 'job,tag,kind,quantity,connects_to\nJ,SVC,service,,\nJ,ARR,array,0,SVC\n',
};

const BOOKS = {
  xlsx: (grid: readonly (readonly GridCell[])[]) =>
    zipOf(xlsxParts([{ name: 'S', content: sheetData(grid) }])),
  ods: (grid: readonly (readonly GridCell[])[]) => zipOf(odsParts(odsTable('S', grid))),
};

it.each(['xlsx', 'ods'] as const)('answers and equipment facts may be .%s', (format) => {
  const answers = BOOKS[format]([
    ['job', 'tag', 'field', 'code', 'found', 'answer', 'by', 'date'],
    ['J', 'ARR', 'quantity', 'cell/wrong', 0, 1, 'R. Example', '2026-03-01'],
  ]);
  const facts = BOOKS[format]([
    ['job', 'tag', 'voc_stc', 'run_length (m)'],
    ['J', 'ARR', 49.5, 30],
  ]);
  const { jobs, items, unreadable } = readListContents([LIST], { settings }, undefined, {
    answers: [{ name: `answers.${format}`, content: answers }],
    equipmentFacts: [{ name: `facts.${format}`, content: facts }],
  });
  expect(unreadable).toEqual([]);
  expect([...items, ...jobs.flatMap((job) => job.items)].map((i) => i.code)).toEqual([]);
  expect(jobs[0]?.rows[1]?.facts).toMatchObject({
    quantity: { value: 1, origin: { from: 'answer', file: `answers.${format}!S`, line: 2 } },
    voc_stc: { value: 49.5, origin: { file: `facts.${format}!S`, line: 2 } },
    run_length: { value: [30] },
  });
});
