// Records of many jobs, made from the plans of the demo as if every protector had been fitted: one `record.json` a job.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { jsonText, planJob, readInputs } from '../dist/index.js';
import { siteForms } from '../dist/site-forms/rows.js';

const FITTED = '2026-04-14';
const UNSEEN = new Set(['night', 'source off', 'still']);
const origin = { file: 'site-record.csv', line: 2 };

/**
 * Writes the records of a number of jobs.
 * @param {string} demo the folder of the demo
 * @param {string} out the output folder, made where it isn't there; a folder a job below it
 * @param {number} jobs how many
 * @returns {Promise<number>} bytes of all records
 */
export async function writeRecords(demo, out, jobs) {
  const inputs = await readInputs({ make: 'plan', lists: [demo], date: FITTED, dateGiven: true });
  const plans = inputs.jobs.map((job) => planJob(job, inputs));
  let serial = 0;
  let bytes = 0;
  for (let i = 0; i < jobs; i += 1) {
    const plan = plans[i % plans.length];
    const job = `${plan.job}-${String(i).padStart(5, '0')}`;
    const text = jsonText(recordOf(plan, job, () => String((serial += 1)).padStart(7, '0')));
    mkdirSync(join(out, job), { recursive: true });
    writeFileSync(join(out, job, 'record.json'), text);
    bytes += Buffer.byteLength(text);
  }
  return bytes;
}

function recordOf(plan, job, nextSerial) {
  const forms = siteForms(plan);
  return {
    version: 1,
    job,
    jobName: plan.jobName,
    address: plan.address,
    plan: forms.plan,
    state: 'as built',
    files: [],
    housings: plan.protectors.map((protector) => housingOf(protector, nextSerial())),
    readings: forms.readings.map(readingOf),
    facts: [],
    items: [],
    deviations: [],
    due: [],
    asBuilt: { protectors: plan.protectors },
  };
}

function housingOf({ tag, part, partDetails, place, ports, channels, figures }, serial) {
  const entry = {
    outcome: 'fitted',
    partFitted: part ?? '',
    serials: [{ serial, dateCode: '2607' }],
    serialRemoved: [],
    place,
    leadLength: 0.4,
    leadGauge: '10 AWG',
    device: { fitted: 'two-pole breaker 20 A', volts: 240, interrupting: 10000, position: 'spaces 2 and 4' },
    torque: '18 lb-in',
    instrument: 'meter M-07, calibrated 2026-01-12',
    groundPoint: 'ground bar',
    faultCurrent: null,
    photos: [],
    change: '',
    reason: '',
    date: FITTED,
    time: '10:40',
    name: 'crew 2',
    licence: '',
    origin,
  };
  return {
    tag,
    partPlanned: part ?? '',
    maker: partDetails?.maker ?? '',
    place,
    ports,
    conductors: channels.map(({ wire }) => wire.name),
    level: figures?.up ?? null,
    current: 0,
    entries: [entry],
  };
}

/** A reading that was taken, but for those that nobody could see on that day. */
function readingOf({ protector, channel, conductor, kind, from, to, state, low, high, expected }) {
  const due = kind !== 'volts' && UNSEEN.has(state);
  return {
    tag: protector,
    channel: channel === '' ? null : Number(channel),
    conductor,
    kind,
    from,
    to,
    state,
    low: low === '' ? null : low,
    high: high === '' ? null : high,
    expected,
    found: due ? '' : kind === 'volts' ? String(high) : expected,
    whyNot: due ? 'daylight' : '',
    due,
    date: FITTED,
    name: 'crew 2',
    origin,
  };
}
