import { ROW_MESSAGES } from '../../model/messages/rows.js';
import { lineOf } from '../lines.js';
import { says } from '../message-kit.js';

/** Words of the messages of model/messages/rows.ts. */
export const ROW_WORDS = [
  says(ROW_MESSAGES.arraysOrModules, {
    title: 'A quantity of an array may count arrays or modules',
    message: (p) =>
      `The quantity of ${p.tag} is ${p.quantity}: ${p.quantity} arrays, or ${p.quantity} modules? One array is planned until that is settled.`,
    found: (p) => `${p.quantity}`,
    expected: 'quantity 1 with modules, or as many inputs as arrays',
    hint: 'Write the number of modules in modules; for several arrays, a row each, or dc_inputs of what they feed.',
  }),
  says(ROW_MESSAGES.stringTwice, {
    title: 'Two rows state the same string of an array',
    message: (p) => {
      const lines = [p.first, p.second];
      return `String ${p.string} of ${p.tag} stands twice: ${lines.map((one) => lineOf(one, lines)).join(' and ')}.`;
    },
    found: (p) => p.string,
    expected: 'an index that no other string of the array has',
    hint: 'Correct string, or take one of the rows out.',
  }),
  says(ROW_MESSAGES.stringsDiffer, {
    title: 'The strings of one array differ',
    message: (p) =>
      `The strings of ${p.tag} differ in ${p.field}: ${lineOf(p.first, [p.second])} and ${lineOf(p.second, [p.first])}; the first is planned.`,
    found: (p) => p.field,
    expected: 'strings of one kind on one input',
    hint: 'Correct the rows, or give what differs a tag of its own.',
  }),
  says(ROW_MESSAGES.stringsLongest, {
    title: 'The longest string stands for the run of an array',
    message: (p) => `The strings of ${p.tag} have runs of different length: the longest is taken.`,
    expected: 'the run from the array to what it feeds',
    hint: 'Confirm, or state one run_length.',
  }),
  says(ROW_MESSAGES.modulesProduct, {
    title: 'Modules, series and strings contradict each other',
    message: (p) =>
      `${p.tag} has ${p.modules} modules by modules, but ${p.series} in series times ${p.strings} in parallel are ${p.product}.`,
    found: (p) => `${p.modules}`,
    expected: 'modules = modules_in_series x strings_in_parallel',
    hint: 'Correct one of the three.',
  }),
  says(ROW_MESSAGES.modulesUneven, {
    title: 'The modules of an array do not come out even',
    message: (p) =>
      p.of === 'series'
        ? `${p.tag} has ${p.modules} modules, which ${p.each} in series don’t divide.`
        : `${p.tag} has ${p.modules} modules, which ${p.each} strings don’t divide.`,
    found: (p) => `${p.modules}`,
    expected: 'a whole number of strings of equal length',
    hint: 'Correct modules, modules_in_series or strings_in_parallel.',
  }),
  says(ROW_MESSAGES.lengthsCount, {
    title: 'There are other numbers of lengths and targets',
    message: (p) =>
      `${p.tag} states ${p.lengths} lengths for ${p.targets} ${p.targets === 1 ? 'row' : 'rows'} that it connects to: which is whose isn’t known.`,
    found: (p) => `${p.lengths}`,
    expected: 'one length for all, or one for each in their order',
    hint: 'Correct run_length or connects_to.',
  }),
];
