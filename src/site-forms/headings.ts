/** Headings of `site-record.csv`, a row a housing, in their order. */
export const RECORD_HEADINGS = [
  'job',
  'plan',
  'protector',
  'part_planned',
  'part_fitted',
  'serial',
  'date_code',
  'outcome',
  'serial_removed',
  'place',
  'lead_length',
  'lead_gauge',
  'device_fitted',
  'device_volts',
  'device_interrupting_ka',
  'device_position',
  'torque',
  'instrument',
  'ground_point',
  'fault_current',
  'photo',
  'change',
  'reason',
  'date',
  'time',
  'name',
  'licence',
] as const;
export type RecordHeading = (typeof RECORD_HEADINGS)[number];

/** Headings of `site-readings.csv`, a row a reading, in their order. */
export const READING_HEADINGS = [
  'job',
  'plan',
  'protector',
  'channel',
  'conductor',
  'kind',
  'from',
  'to',
  'state',
  'low',
  'high',
  'expected',
  'found',
  'why_not',
  'date',
  'name',
] as const;
export type ReadingHeading = (typeof READING_HEADINGS)[number];

/** Headings of `site-facts.csv`, a row an assumption and what it is about, in their order. */
export const FACT_HEADINGS = [
  'job',
  'plan',
  'assumption',
  'tag',
  'fact',
  'assumed',
  'found',
  'by',
  'date',
  'photo',
] as const;
export type FactHeading = (typeof FACT_HEADINGS)[number];

/** A row of a form as it is given out: texts by heading; a figure stays one; `` is a cell to fill in. */
export type RecordCells = Readonly<Record<RecordHeading, string>>;
export type ReadingCells = Readonly<Record<ReadingHeading, string | number>>;
export type FactCells = Readonly<Record<FactHeading, string>>;
