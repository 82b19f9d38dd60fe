/** Months from one look at the lights to the next where the company states no other: common practice, no source. */
export const MONTHS_BETWEEN_LOOKS = 12;

/**
 * The day of the next look.
 * @param last `YYYY-MM-DD` of the last one, or of the day of fitting
 * @param months from one to the next, 1 or more
 * @returns `YYYY-MM-DD`: the same day of the month, or its last one where the month is shorter
 */
export function nextLook(last: string, months: number): string {
  const [year = 0, month = 1, day = 1] = last.split('-').map(Number);
  const first = new Date(Date.UTC(year, month - 1 + months, 1));
  const days = new Date(Date.UTC(first.getUTCFullYear(), first.getUTCMonth() + 1, 0)).getUTCDate();
  first.setUTCDate(Math.min(day, days));
  return first.toISOString().slice(0, 10);
}
