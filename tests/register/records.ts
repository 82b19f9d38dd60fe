import { RecordSchema, type SiteRecord } from '../../src/model/record.js';

type Housing = SiteRecord['housings'][number];
type Entry = Housing['entries'][number];
type Reading = SiteRecord['readings'][number];

const ORIGIN = { file: 'site-record.csv', line: 2 };

/** An entry of a housing's record: fitted on 14 March 2025 by crew 2. */
export function entryOf(more: Partial<Entry> = {}): Entry {
  return {
    outcome: 'fitted',
    partFitted: 'WK-TEASEL',
    serials: [{ serial: '004100', dateCode: '2503' }],
    serialRemoved: [],
    place: '',
    leadLength: 0.4,
    leadGauge: '10 AWG',
    device: { fitted: '', volts: null, interrupting: null, position: '' },
    torque: '18 lb-in',
    instrument: 'meter M-07, calibrated 2025-01-12',
    groundPoint: '',
    faultCurrent: null,
    photos: [],
    change: '',
    reason: '',
    date: '2025-03-14',
    time: '10:30',
    name: 'crew 2',
    licence: '',
    origin: ORIGIN,
    ...more,
  };
}

/** A housing with its record. */
export function housingOf(tag: string, more: Partial<Housing> = {}): Housing {
  const entries = more.entries ?? [entryOf()];
  return {
    tag,
    partPlanned: 'WK-TEASEL',
    maker: 'Wicklethorn Works',
    place: 'Shed / wall',
    ports: [{ equipment: 'BAT', port: 'battery' }],
    conductors: ['positive', 'negative'],
    level: 460,
    current: entries.length - 1,
    ...more,
    entries,
  };
}

/** A reading of a light, seen lit on the first day. */
export function readingOf(tag: string, more: Partial<Reading> = {}): Reading {
  return {
    tag,
    channel: 1,
    conductor: 'positive',
    kind: 'light',
    from: '',
    to: '',
    state: 'always',
    low: null,
    high: null,
    expected: 'lit',
    found: 'lit',
    whyNot: '',
    due: false,
    date: '2025-03-14',
    name: 'crew 2',
    origin: ORIGIN,
    ...more,
  };
}

/** The record of a job, as `record` writes it. */
export function recordOf(job: string, more: Partial<SiteRecord> = {}): SiteRecord {
  return RecordSchema.parse({
    version: 1,
    job,
    jobName: 'Reed Hollow',
    address: '4 Sedge Lane, Quillmarsh',
    plan: 'BCDFGHJK',
    state: 'as built',
    files: [],
    housings: [housingOf('P-1')],
    readings: [],
    facts: [],
    items: [],
    deviations: [],
    due: [],
    asBuilt: { protectors: [] },
    ...more,
  });
}
