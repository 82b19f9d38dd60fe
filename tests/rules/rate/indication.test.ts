import { indication } from '../../../src/rules/rate/indication.js';
import { fitTable } from '../table.js';

export const table = fitTable(import.meta.url, indication, [
  {
    name: 'nec-2023, none: rejected (NEC 2023 242.9)',
    part: { indicator: 'none' },
    rejects: 'it has no indicator, which 242.9 asks for',
  },
  ...(['light', 'flag', null] as const).map((indicator) => ({
    name: `nec-2023, ${indicator ?? 'not stated'}`,
    part: { indicator },
  })),
  ...(['nec-2017', 'nec-2020', 'iec'] as const).map((basis) => ({
    name: `${basis} knows no such clause: a part without an indicator fits`,
    given: { basis },
    part: { indicator: 'none' as const },
    outside: 'NEC 2023 alone asks for it',
  })),
]);
