/** Standards that hold for one kind of installation: named with it, since a rule of many circuits may cite them. */
const SCOPES: Readonly<Record<string, string>> = { 'IEC 60364-7-712': 'for photovoltaic systems' };

/** An edition that is a count, not a year: it stands behind a comma. */
const COUNTED = / edition$/;

/**
 * How a standard is named: `NEC (NFPA 70) 2023`, `UL 1449, 5th edition`, `IEC 60364-7-712 2017 (for photovoltaic systems)`.
 * @param source its name and its edition, `` where there is none
 */
export function standardName(source: { readonly standard: string; readonly edition: string }): string {
  const scope = SCOPES[source.standard];
  const joint = COUNTED.test(source.edition) ? ', ' : ' ';
  const name = source.edition === '' ? source.standard : `${source.standard}${joint}${source.edition}`;
  return scope === undefined ? name : `${name} (${scope})`;
}
