const json = (value: unknown): string => JSON.stringify(value, null, 2);

/** A column map as a page shows it: every form that it can have. Invented. */
export const EXAMPLE_COLUMN_MAP = json({
  dialect: { encoding: 'windows-1252', delimiter: ';', decimal: ',', headingLine: 3 },
  columns: {
    Kennung: 'tag',
    Bauteil: 'kind',
    'Verbunden mit': 'connects_to',
    Strecke: { field: 'run_length', unit: 'm' },
    Bemerkung: null,
    'Bemerkung #2': 'description',
    Zone: '? place',
  },
  words: {
    kind: { Unterverteilung: 'sub-panel', Hausanschluss: 'service' },
    outdoors: { ja: 'yes', nein: 'no' },
  },
});

/** Settings as a page shows them. Invented. */
export const EXAMPLE_SETTINGS = json({
  company: { name: 'Example Electric (invented)', phone: '555-0100', licence: 'INVENTED 0001' },
  permitPaper: 'tabloid',
  basis: 'nec-2020',
  words: { kind: { Gubbins: 'combiner' } },
  settled: [
    {
      field: 'worth_protecting',
      value: 'yes',
      kinds: ['inverter-charger'],
      by: 'R. Example',
      date: '2026-02-03',
    },
  ],
  thresholds: { longRunNec: 20 },
});
