/** What stands before the decimals; `auto` reads what can be read one way only, `auto-comma` does so in a file that shows decimal commas. */
export type DecimalMark = 'auto' | 'auto-comma' | '.' | ',';

/** Why a text is no number: it can be read two ways, it was shortened by a spreadsheet, its groups of digits aren't of three, or it is none. */
export type NumberProblem = 'two-ways' | 'shortened' | 'grouping' | 'no-number';

/** A number and what follows it in the text, trimmed. */
export type NumberReading =
  | { readonly ok: true; readonly value: number; readonly rest: string }
  | { readonly ok: false; readonly problem: NumberProblem };

/** A blank or an apostrophe belongs to the number only where three digits follow it. */
const LITERAL =
  /^([+\-\u2212\u2013]?)\s*((?:\d|[.,]\d)(?:[\d.,]|[' \u00a0\u202f\u2009](?=\d{3}(?!\d)))*)(.*)$/s;
const MINUS = '-\u2212\u2013';
const SHORTENED = /^e[+-]?\d/i;
const SPACED = /^\d{1,3}(?:([' \u00a0\u202f\u2009])\d{3})(?:\1\d{3})*(?:[.,]\d*)?$/;
const GROUPS_BY_COMMA = /^\d{1,3}(?:,\d{3})+$/;
const GROUPS_BY_DOT = /^\d{1,3}(?:\.\d{3})+$/;
/** One mark, three digits after it, and something before it that could be thousands. */
const TWO_WAYS = /^[1-9]\d{0,2}[.,]\d{3}$/;

const fail = (problem: NumberProblem): NumberReading => ({ ok: false, problem });

interface Digits {
  /** The figure as JavaScript writes it. */
  readonly digits: string;
}

/** The figure of a literal, or what is wrong with its marks. */
function plainDigits(literal: string, mark: DecimalMark): Digits | NumberProblem {
  const spaced = /[' \u00a0\u202f\u2009]/.test(literal);
  if (spaced && !SPACED.test(literal)) return 'grouping';
  const digits = spaced ? literal.replace(/[' \u00a0\u202f\u2009]/g, '') : literal;
  const comma = digits.indexOf(',');
  const dot = digits.indexOf('.');
  if (comma < 0 && dot < 0) return { digits };
  if (mark === '.' || mark === ',') return byMark(digits, mark);
  if (comma >= 0 && dot >= 0)
    return byMark(digits, digits.lastIndexOf(',') > digits.lastIndexOf('.') ? ',' : '.');
  const only = comma >= 0 ? ',' : '.';
  if (digits.indexOf(only) !== digits.lastIndexOf(only)) return byMark(digits, only === ',' ? '.' : ',');
  if (!spaced && TWO_WAYS.test(digits) && (only === ',' || mark === 'auto-comma')) return 'two-ways';
  return byMark(digits, only);
}

/** Takes `decimal` as the decimal mark and the other as the mark between groups of three. */
function byMark(digits: string, decimal: '.' | ','): Digits | NumberProblem {
  const at = digits.indexOf(decimal);
  const whole = at < 0 ? digits : digits.slice(0, at);
  const decimals = at < 0 ? '' : digits.slice(at + 1);
  if (/[.,]/.test(decimals)) return 'grouping';
  const group = decimal === '.' ? ',' : '.';
  const tail = decimals === '' ? '0' : decimals;
  if (!whole.includes(group)) return { digits: `${whole === '' ? '0' : whole}.${tail}` };
  if (!(group === ',' ? GROUPS_BY_COMMA : GROUPS_BY_DOT).test(whole)) return 'grouping';
  return { digits: `${whole.replaceAll(group, '')}.${tail}` };
}

/**
 * Reads the number at the start of a text.
 * @param text trimmed text, such as `1 234,5 m` or `-0.27%/C`
 * @param mark the decimal mark; `auto`: `12,5` is 12.5 and `1,234.5` is 1234.5, but `1,234` can be read two ways
 * @returns the number and the rest of the text, or why there is none; never NaN, never infinite
 */
export function readNumber(text: string, mark: DecimalMark = 'auto'): NumberReading {
  const match = LITERAL.exec(text);
  if (match === null) return fail('no-number');
  const sign = match[1] ?? '';
  const rest = (match[3] ?? '').trim();
  if (SHORTENED.test(rest)) return fail('shortened');
  const read = plainDigits(match[2] ?? '', mark);
  if (typeof read === 'string') return fail(read);
  const value = Number(read.digits);
  if (!Number.isFinite(value)) return fail('no-number');
  return { ok: true, value: sign !== '' && MINUS.includes(sign) && value !== 0 ? -value : value, rest };
}
