import type { FileLine } from '../fact.js';
import type { RowField } from '../list.js';
import { message } from '../message.js';

/** Messages about what rows stand for: strings, modules, quantities, lengths. */
export const ROW_MESSAGES = {
  arraysOrModules: message<{ tag: string; quantity: number }>(
    'site/arrays-or-modules',
    'conflict',
    'designer',
  ),
  stringTwice: message<{ tag: string; string: string; first: FileLine; second: FileLine }>(
    'site/string-twice',
    'conflict',
    'designer',
  ),
  stringsDiffer: message<{ tag: string; field: RowField; first: FileLine; second: FileLine }>(
    'site/strings-differ',
    'conflict',
    'designer',
  ),
  stringsLongest: message<{ tag: string }>('site/strings-longest', 'confirm', 'designer'),
  modulesProduct: message<{ tag: string; modules: number; series: number; strings: number; product: number }>(
    'site/modules-product',
    'conflict',
    'designer',
  ),
  modulesUneven: message<{ tag: string; modules: number; of: 'series' | 'strings'; each: number }>(
    'site/modules-uneven',
    'conflict',
    'designer',
  ),
  lengthsCount: message<{ tag: string; lengths: number; targets: number }>(
    'site/lengths-count',
    'conflict',
    'designer',
  ),
} as const;
