/**
 * A stored number as text: all its digits, none of those that only its binary form has, no exponent but where digits were lost.
 * @param value finite
 * @param mark of its decimals
 */
export function numberText(value: number, mark: '.' | ','): string {
  // A spreadsheet keeps fifteen digits (ECMA-376 part 1, clause 18.17 stores them in binary64).
  const rounded = Number(value.toPrecision(15));
  if (Math.abs(rounded) >= 1e15) return lostDigits(rounded);
  const plain = withoutExponent(String(rounded));
  if (mark === ',') return plain.replace('.', ',');
  // Three decimals could be thousands in a list with decimal commas; a nought more is read in one way only.
  return /^-?[1-9]\d{0,2}\.\d{3}$/.test(plain) ? `${plain}0` : plain;
}

/** As a spreadsheet shows what it has shortened: a name of that form is asked about. */
function lostDigits(value: number): string {
  const [digits = '', exponent = ''] = value.toExponential().toUpperCase().split('E+');
  return `${digits}E+${exponent.padStart(2, '0')}`;
}

/** Shown in powers of ten, which a code with an E in it becomes when it is typed. */
export function powerOfTen(value: number): string {
  const [digits = '', exponent = ''] = Number(value.toPrecision(15)).toExponential().toUpperCase().split('E');
  return `${digits}E${exponent.startsWith('-') ? '-' : '+'}${exponent.slice(1).padStart(2, '0')}`;
}

function withoutExponent(text: string): string {
  const match = /^(-?)(\d)(?:\.(\d+))?e-(\d+)$/.exec(text);
  if (match === null) return text;
  const [, sign = '', first = '', rest = '', exponent = '0'] = match;
  return `${sign}0.${'0'.repeat(Number(exponent) - 1)}${first}${rest}`;
}

const DAY = 86_400_000;
/** Day 0 of the two ways to count days (ECMA-376 part 1, clause 18.17.4.1), by UTC. */
const DAY_0 = { from1900: Date.UTC(1899, 11, 30), from1904: Date.UTC(1904, 0, 1) };

/**
 * A stored count of days as a date, `YYYY-MM-DD`, with `HH:MM:SS` behind it or alone where it holds a time of day.
 * @param days finite
 * @param from1904 days are counted from 1904 on
 * @returns null: no date that a spreadsheet shows
 */
export function dateText(days: number, from1904: boolean): string | null {
  if (days < 0 || days >= 2_958_466) return null;
  // 1900 is counted as a leap year there, so that days before 1 March of it are one further on.
  const shift = !from1904 && days >= 1 && days < 60 ? 1 : 0;
  const ms = Math.round((days + shift) * 86_400) * 1000;
  const iso = new Date((from1904 ? DAY_0.from1904 : DAY_0.from1900) + ms).toISOString();
  const [day = '', time = ''] = iso.slice(0, 19).split('T');
  if (ms % DAY === 0) return day;
  return days < 1 ? time : `${day} ${time}`;
}
