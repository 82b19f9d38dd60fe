import { dateText, numberText, powerOfTen } from './number-text.js';
import type { StoredCell } from './sheet.js';

/** Formats that a workbook needn't state (ECMA-376 part 1, clause 18.8.30) and that change what a number says. */
const BUILT_IN: Readonly<Record<number, string>> = {
  9: '0%',
  10: '0.00%',
  11: '0.00E+00',
  48: '##0.0E+0',
};
/** Dates and times among them, those of east Asian editions too. */
const BUILT_IN_DATES: readonly (readonly [number, number])[] = [
  [14, 22],
  [27, 36],
  [45, 47],
  [50, 58],
];

interface Section {
  readonly isDate: boolean;
  readonly inPowers: boolean;
  readonly percent: boolean;
  /** Noughts ahead of a whole number: `0000`. */
  readonly padTo: number;
  /** Each divides by a thousand. */
  readonly commas: number;
  /** Text behind the figure, such as ` kV`. */
  readonly behind: string;
  readonly when: ((value: number) => boolean) | null;
}

/** How numbers of one format are told as text. */
export interface NumberFormat {
  readonly sections: readonly Section[];
}

/** The format of a number, by its id and, where the workbook states one, its code. */
export function numberFormat(id: number, code: string | undefined): NumberFormat {
  const text = code ?? BUILT_IN[id];
  if (text === undefined) {
    const isDate = BUILT_IN_DATES.some(([first, last]) => id >= first && id <= last);
    return { sections: [{ ...PLAIN, isDate }] };
  }
  return { sections: sectionsOf(text.slice(0, 1000)).map(readSection) };
}

const PLAIN: Section = {
  isDate: false,
  inPowers: false,
  percent: false,
  padTo: 0,
  commas: 0,
  behind: '',
  when: null,
};

/** The pieces of a format's code: text in quotes, an escaped or filling character, brackets, or one character. */
const PIECE = /"[^"]*"?|[\\_*].?|\[[^\]]*\]?|General|./gisu;

function sectionsOf(code: string): string[][] {
  const sections: string[][] = [[]];
  for (const [piece] of code.matchAll(PIECE))
    if (piece === ';') sections.push([]);
    else sections.at(-1)?.push(piece);
  return sections;
}

const CONDITION = /^\[(<=|>=|<>|<|>|=)(-?\d+(?:\.\d+)?)\]$/;
const COMPARE: Readonly<Record<string, (a: number, b: number) => boolean>> = {
  '<': (a, b) => a < b,
  '>': (a, b) => a > b,
  '<=': (a, b) => a <= b,
  '>=': (a, b) => a >= b,
  '=': (a, b) => a === b,
  '<>': (a, b) => a !== b,
};

function readSection(pieces: readonly string[]): Section {
  let figure = '';
  let behind = '';
  let isDate = false;
  let percent = false;
  let when: Section['when'] = null;
  for (const piece of pieces) {
    const condition = CONDITION.exec(piece);
    if (condition !== null) {
      const compare = COMPARE[condition[1] ?? ''];
      when = (value) => compare?.(value, Number(condition[2])) === true;
    } else if (/^\[(?:h+|m+|s+)\]$/i.test(piece)) isDate = true;
    else if (piece.startsWith('[') || /^[_*]/.test(piece)) continue;
    else if (piece.startsWith('"')) behind += figure === '' ? '' : piece.replaceAll('"', '');
    else if (piece.startsWith('\\')) behind += figure === '' ? '' : piece.slice(1);
    else if (piece === '%') percent = true;
    else if (/^[ymdhsg]$/i.test(piece)) isDate = true;
    else if (/^general$/i.test(piece) || /^[0#?.,Ee+/-]$/.test(piece)) figure += piece;
    else if (figure !== '') behind += piece;
  }
  return {
    isDate,
    percent,
    when,
    inPowers: /[0#?]E[+-]/i.test(figure),
    padTo: /^0{2,}$/.test(figure) ? figure.length : 0,
    commas: /,*$/.exec(figure)?.[0].length ?? 0,
    behind: /\p{L}|\u00b0|['"]/u.test(behind) ? behind.trimEnd() : '',
  };
}

/** The section for a value: by its conditions, else by its sign (clause 18.8.31). */
function sectionFor({ sections }: NumberFormat, value: number): Section {
  const [first = PLAIN, second, third] = sections;
  if (first.when !== null || second?.when != null) {
    const section = sections.slice(0, 2).find((one) => one.when?.(value) === true);
    return section ?? third ?? second ?? first;
  }
  if (value < 0 && second !== undefined) return second;
  if (value === 0 && third !== undefined) return third;
  return first;
}

/**
 * A number as text: as it is stored, with what its format says of it where that changes what it means (percent, a unit, a date).
 * @param value finite
 * @param format of the cell
 * @param from1904 days are counted from 1904 on
 * @param mark of decimals
 */
export function formatted(
  value: number,
  format: NumberFormat,
  from1904: boolean,
  mark: '.' | ',',
): StoredCell {
  const section = sectionFor(format, value);
  const date = section.isDate ? dateText(value, from1904) : null;
  if (date !== null) return { text: date, isDate: true };
  if (section.percent) return { text: `${numberText(value * 100, mark)}%${section.behind}`, isDate: false };
  if (section.inPowers) return { text: powerOfTen(value), isDate: false };
  // Scaled and with a unit, it is the scaled figure that has this unit; scaled alone, nothing says so.
  if (section.behind !== '') {
    const scaled = value / 1000 ** section.commas;
    return { text: `${numberText(scaled, mark)}${section.behind}`, isDate: false };
  }
  const text = numberText(value, mark);
  const padded = Number.isInteger(value) && value >= 0 && text.length < section.padTo;
  return { text: padded ? text.padStart(section.padTo, '0') : text, isDate: false };
}
