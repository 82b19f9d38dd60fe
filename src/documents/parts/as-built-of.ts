import type { Plan, PlannedProtector } from '../../model/plan.js';
import type { SiteRecord } from '../../model/record.js';
import { STATES, type SystemState } from '../../model/words.js';
import { SEEN_LOOKS, type Lacked, type SeenLook } from '../../words/languages/as-built-words.js';
import type { AsBuilt, BuiltDue, BuiltHousing, BuiltLook, BuiltVolts, Made, Outcome } from './as-built.js';
import { builtChanges } from './built-changes.js';
import { probesOf } from './built-readings.js';
import { builtPlan } from './built-plan.js';

type Reading = SiteRecord['readings'][number];

const MADE: { readonly [S in SiteRecord['state']]: Made } = {
  planned: 'planned',
  'record open': 'open',
  'as built': 'built',
  'as built with deviations': 'deviating',
};

const OUTCOMES: { readonly [O in NonNullable<Entry['outcome']>]: Outcome } = {
  fitted: 'fitted',
  moved: 'moved',
  'not fitted': 'notFitted',
  kept: 'kept',
  replaced: 'replaced',
  removed: 'removed',
};

/** What stands in the place of a serial where the part has none. */
const NO_SERIAL = 'none';

type Entry = SiteRecord['housings'][number]['entries'][number];

/** The entry of a housing that counts; undefined: nothing was recorded of it. */
export function currentEntry({ current, entries }: SiteRecord['housings'][number]): Entry | undefined {
  return entries[current];
}

/** What hangs there was fitted by the last entry that says so. */
function fittedOn({ outcome, date }: Entry): string {
  return outcome === 'fitted' || outcome === 'moved' || outcome === 'replaced' ? date : '';
}

const deviceText = ({ fitted, volts, interrupting, position }: Entry['device']): string =>
  [
    fitted,
    volts === null ? '' : `${String(volts)} V`,
    interrupting === null ? '' : `${String(interrupting / 1000)} kA`,
    position,
  ]
    .filter((text) => text !== '')
    .join(', ');

function housingOf(record: SiteRecord, one: SiteRecord['housings'][number]): BuiltHousing | undefined {
  const entry = currentEntry(one);
  if (entry === undefined) return undefined;
  const look = record.due.find(({ protector, kind }) => protector === one.tag && kind === 'look');
  return {
    tag: one.tag,
    outcome: entry.outcome === null ? null : OUTCOMES[entry.outcome],
    serials: entry.serials.map((one) => (one.serial === NO_SERIAL ? { ...one, serial: '' } : one)),
    lead: entry.leadLength,
    gauge: entry.leadGauge,
    device: deviceText(entry.device),
    position: entry.device.position,
    torque: entry.torque,
    instrument: entry.instrument,
    groundPoint: entry.groundPoint,
    name: entry.name,
    licence: entry.licence,
    date: entry.date,
    change: entry.change,
    replaced: entry.serialRemoved.join('; '),
    fittedOn: fittedOn(entry),
    nextCheck: look?.on ?? '',
  };
}

/** Housings that share what is read to ground or pole to pole: those at the same ports. */
function sharing(plan: Plan, tag: string): string[] {
  const portsOf = (one: PlannedProtector): string => JSON.stringify(one.ports);
  const own = plan.protectors.find((one) => one.tag === tag);
  if (own === undefined) return [tag];
  return plan.protectors.filter((one) => portsOf(one) === portsOf(own)).map((one) => one.tag);
}

function voltsOf(plan: Plan, reading: Reading): BuiltVolts[] {
  const { tag, kind, found } = reading;
  const volts = found === '' ? NaN : Number(found);
  const probes = probesOf(reading);
  if (kind !== 'volts' || Number.isNaN(volts) || probes === null) return [];
  return sharing(plan, tag).map((one) => ({ tag: one, ...probes, volts }));
}

const stateOf = (text: string): SystemState | undefined => STATES.find((one) => one === text);
const lookOf = (text: string): SeenLook | undefined => SEEN_LOOKS.find((one) => one === text);

function looksOf({ tag, kind, channel, state, expected, found }: Reading): BuiltLook[] {
  const [seen, when] = [lookOf(found), stateOf(state)];
  if (kind === 'volts' || channel === null || seen === undefined || when === undefined) return [];
  const may = expected.split('; ');
  return [{ tag, channel, state: when, look: seen, asPlanned: may.includes(seen) || may.includes('either') }];
}

/** Which fact of a housing a column of the crew's forms holds. */
const LACKED: Readonly<Record<string, Lacked>> = {
  outcome: 'outcome',
  part_fitted: 'part',
  serial: 'serial',
  date_code: 'serial',
  lead_length: 'lead',
  torque: 'torque',
  device_fitted: 'device',
  found: 'reading',
  date: 'date',
  name: 'name',
};

function openOf(record: SiteRecord): AsBuilt['open'] {
  return record.items.flatMap(({ severity, equipment, field, column }) => {
    if (severity === 'confirm') return [];
    return [{ tag: equipment, severity, what: LACKED[field ?? column] ?? ('other' as const) }];
  });
}

function dueOf(record: SiteRecord): BuiltDue[] {
  return record.due.map(({ protector, kind, state, on }) => ({
    tag: protector,
    reading:
      kind === 'volts' || kind === 'light' || kind === 'flag' ? { kind, state: stateOf(state) ?? '' } : null,
    on,
  }));
}

/**
 * What documents show of a record.
 * @param plan of the job
 * @param fits false: the record belongs to another plan, and is open whatever it says
 */
export function asBuilt(plan: Plan, record: SiteRecord, fits: boolean): AsBuilt {
  const looks = record.readings.flatMap(looksOf);
  return {
    made: fits ? MADE[record.state] : 'open',
    deviations: record.deviations.length,
    open: [...(fits ? [] : [{ tag: '', severity: 'conflict', what: 'plan' } as const]), ...openOf(record)],
    changes: builtChanges(plan, record),
    housings: new Map(
      record.housings.flatMap((one) => {
        const housing = housingOf(record, one);
        return housing === undefined ? [] : [[one.tag, housing] as const];
      }),
    ),
    volts: record.readings.flatMap((reading) => voltsOf(plan, reading)),
    looks,
    due: dueOf(record),
    plan: builtPlan(plan, record, looks),
  };
}
