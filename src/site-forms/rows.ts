import { byNaturalOrder } from '../model/natural-order.js';
import type { Plan, PlannedChannel, PlannedIndicator, PlannedProtector } from '../model/plan.js';
import type { PlannedBand, Probes } from '../model/planned-measuring.js';
import type { Wire } from '../model/wire.js';
import type { Shows, SystemState } from '../model/words.js';
import { planAssumptions } from '../words/assumptions/of-plan.js';
import { conductorText } from '../words/conductors.js';
import { decisionsOf, planMark } from './decisions.js';
import {
  FACT_HEADINGS,
  READING_HEADINGS,
  RECORD_HEADINGS,
  type FactCells,
  type ReadingCells,
  type RecordCells,
} from '../model/site-form-headings.js';

/** What a crew is given to fill in for one job, as far as its plan knows it. */
export interface SiteForms {
  readonly job: string;
  /** Fingerprint of the plan's decisions. */
  readonly plan: string;
  readonly record: readonly RecordCells[];
  readonly readings: readonly ReadingCells[];
  readonly facts: readonly FactCells[];
}

/**
 * The rows of a job's forms: a housing each, in the order of the tags; a reading each, volts before lights; an assumption each that
 * papers ask to verify, and each tag that it names.
 * @param plan of the job
 * @returns volts in V; `` where something is to be filled in, or not known
 */
export function siteForms(plan: Plan): SiteForms {
  const mark = planMark(decisionsOf(plan));
  const head = { job: plan.job, plan: mark };
  return {
    ...head,
    record: inOrder(plan).map(({ tag, part, place }) => ({
      ...blankCells(RECORD_HEADINGS),
      ...head,
      protector: tag,
      part_planned: part ?? '',
      place,
    })),
    readings: plannedReadings(plan).map(({ cells }) => ({
      ...blankCells(READING_HEADINGS),
      ...head,
      ...cells,
    })),
    facts: planAssumptions(plan).flatMap(({ isOpen, number, assumption, tags, facts }) => {
      if (!isOpen) return [];
      const about = facts.size > 0 ? [...facts.keys()] : tags.length > 0 ? tags : [''];
      return about.map((tag) => ({
        ...blankCells(FACT_HEADINGS),
        ...head,
        assumption: number,
        tag,
        fact: facts.get(tag)?.field ?? assumption.says,
        assumed: facts.get(tag)?.value ?? AS_SAID,
      }));
    }),
  };
}

/** Of an assumption that is a sentence and no field: it holds. */
const AS_SAID = 'yes';

/** A row that nothing is known of. */
export const blankCells = <H extends string>(headings: readonly H[]): Record<H, ''> =>
  Object.fromEntries(headings.map((heading) => [heading, ''])) as Record<H, ''>;

/** What the plan knows of one reading. */
type KnownCells = Pick<
  ReadingCells,
  'protector' | 'channel' | 'conductor' | 'kind' | 'from' | 'to' | 'state' | 'low' | 'high' | 'expected'
>;

/** One reading that is asked for: its cells, and what they were made of. */
export type PlannedReading = { readonly cells: KnownCells; readonly state: SystemState } & (
  | { readonly kind: 'volts'; readonly band: PlannedBand; readonly probes: Probes }
  | {
      readonly kind: 'light' | 'flag';
      readonly channel: PlannedChannel;
      readonly indicator: PlannedIndicator;
    }
);

/**
 * The readings of a job, by housing in the order of the tags, volts before lights.
 * @param plan of the job
 */
export function plannedReadings(plan: Plan): readonly PlannedReading[] {
  // Two housings of one placement share what is read pole to pole or to ground: it is read once.
  const read = new Set<string>();
  return inOrder(plan).flatMap((protector) => {
    const volts = voltsOf(protector).filter(({ cells: { from, to, state } }) => {
      const key = JSON.stringify([protector.ports, from, to, state]);
      return !read.has(key) && read.add(key);
    });
    return [...volts, ...looksOf(protector)];
  });
}

const inOrder = ({ protectors }: Plan): readonly PlannedProtector[] =>
  [...protectors].sort((a, b) => byNaturalOrder(a.tag, b.tag));

function voltsOf({ tag, wiring, channels }: PlannedProtector): PlannedReading[] {
  const { bands, state } = wiring.measuring;
  // Nothing is opened where nobody knows how high the voltage is.
  if (state?.code === 'measure-state/do-not-open') return [];
  const inState = stateOf(wiring.measuring);
  return bands.flatMap((band) =>
    band.between.map((probes): PlannedReading => {
      const { wire, to, sign } = probes;
      const conductor = conductorText(wire);
      const cells: KnownCells = {
        protector: tag,
        channel: channelOf(channels, wire),
        conductor,
        kind: 'volts',
        from: conductor,
        to: to === null ? 'ground' : conductorText(to),
        state: inState(band),
        low: band.low ?? '',
        high: band.high ?? '',
        expected: signed(sign),
      };
      return { kind: 'volts', state: inState(band), cells, band, probes };
    }),
  );
}

/** Which sign a reading has, where it tells something. */
const signed = (sign: Probes['sign']): string =>
  sign === null ? '' : sign === '+' ? 'positive' : 'negative';

/** The first channel of a conductor; `` where it has none. */
function channelOf(channels: readonly PlannedChannel[], wire: Wire): number | '' {
  const own = channels.find((one) => one.wire.name === wire.name && one.wire.port === wire.port);
  return own?.channel ?? '';
}

const IN_STATE = {
  sun: 'sun',
  turbine: 'turning',
  both: 'source on',
  battery: 'always',
  control: 'source on',
} as const;

/** In which state each band of a place is read. */
function stateOf({
  state,
  bands,
}: PlannedProtector['wiring']['measuring']): (band: PlannedBand) => SystemState {
  const of = state?.code === 'measure-state/sources-on' ? state.values.of : undefined;
  if (of !== undefined && of !== 'ac') return () => IN_STATE[of];
  const own = (band: PlannedBand): 'utility' | 'own' | 'any' | undefined => {
    const { reads } = band;
    return reads.code === 'reading/supply' || reads.code === 'reading/either-leg'
      ? reads.values.supply
      : undefined;
  };
  const supplies = new Set(bands.map(own).filter((supply) => supply !== undefined));
  // What no supply gives, such as N to ground, is read on whatever is on there.
  const [only = 'any', ...others] = supplies;
  const common = others.length > 0 ? 'any' : only;
  return (band) => ((own(band) ?? common) === 'utility' ? 'utility on' : 'source on');
}

function looksOf({ tag, channels, partDetails }: PlannedProtector): PlannedReading[] {
  const kind = partDetails?.indicator;
  if (kind !== 'light' && kind !== 'flag') return [];
  return channels.flatMap((channel) =>
    channel.indicator
      .filter(({ cause }) => cause !== 'no-indicator')
      .map((indicator): PlannedReading => {
        const cells: KnownCells = {
          protector: tag,
          channel: channel.channel,
          conductor: conductorText(channel.wire),
          kind,
          from: '',
          to: '',
          state: indicator.state,
          low: '',
          high: '',
          expected: expectedLooks(indicator).join('; '),
        };
        return { kind, state: indicator.state, cells, channel, indicator };
      }),
  );
}

/**
 * How an indicator may look in one state.
 * @returns one word of the contract, or those that are all in order: too little speed, or a load, keeps a light dark that flickers else
 */
export function expectedLooks({ shows, because }: PlannedIndicator): readonly Shows[] {
  const mayBeDark = because.code === 'light/flickers' && because.values.least !== null;
  return mayBeDark ? [shows, 'dark'] : [shows];
}
