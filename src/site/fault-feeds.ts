import type { FaultSource, Fed, Feed, Unknown } from '../model/fault-current.js';
import type { FaultBus, SitePort, SiteRun } from '../model/site.js';
import { busOf, type TransformerBound } from './fault-bus.js';
import { workedOut } from './worked-out.js';

interface Gathered extends Fed {
  readonly feeds: Map<string, FaultSource>;
  readonly apart: Map<string, FaultSource>;
  readonly unknown: Map<string, Unknown>;
}

/** As many ways to set the switches ahead of one bus are compared; of more all that they lead to adds, which is a bound. */
const MOST_WAYS = 64;

/** All that can feed a fault on a bus at one time: of the sources that exclude each other those that drive most. */
export function fedBy(bus: FaultBus, bound: TransformerBound): Fed {
  return workedOut(
    bus,
    { of: (one) => one.fed, keep: (one, fed) => (one.fed = fed) },
    (one) => alternativesOf(one, bound).flat(),
    (one) => highest(one, bound),
  );
}

function highest(bus: FaultBus, bound: TransformerBound): Fed {
  const found = gathered(feedsBack(bus, bound));
  for (const one of bus.given) addFeed(found, one);
  const open: (readonly FaultBus[])[] = [];
  for (const group of alternativesOf(bus, bound)) {
    const [only, ...others] = group;
    if (only && others.length === 0) addAll(found, only.fed);
    else open.push(group);
  }
  const ways = waysOf(open);
  if (!ways) {
    for (const one of open.flat()) addAll(found, one.fed);
    return found;
  }
  let most: Gathered | undefined;
  const all = gathered(found);
  for (const way of ways) {
    const here = gathered(found);
    for (const one of way) addAll(here, one.fed);
    addAll(all, here);
    if (!most || sumOf(here) > sumOf(most)) most = here;
  }
  if (!most) return found;
  for (const [tag, why] of all.unknown) most.unknown.set(tag, why);
  for (const from of [all.feeds, all.apart]) for (const [tag, one] of from) most.apart.set(tag, one);
  for (const tag of most.feeds.keys()) most.apart.delete(tag);
  return most;
}

/** Every choice of one of each group; undefined where there are too many. */
function waysOf(groups: readonly (readonly FaultBus[])[]): readonly (readonly FaultBus[])[] | undefined {
  let ways: (readonly FaultBus[])[] = [[]];
  for (const group of groups) {
    ways = ways.flatMap((way) => group.map((one) => [...way, one]));
    if (ways.length > MOST_WAYS) return undefined;
  }
  return groups.length === 0 ? [] : ways;
}

/**
 * What stands ahead of a bus beside what it is joined to: in groups of which one feeds at a time. An inverter passes on one of its AC
 * inputs, a transfer switch one of its supplies.
 */
function alternativesOf(bus: FaultBus, bound: TransformerBound): readonly (readonly FaultBus[])[] {
  const groups: FaultBus[][] = [];
  const add = (ports: readonly SitePort[]): void => {
    const group = [...new Set(ports.map((port) => busOf(port, 'below', bound)))];
    const isThere = groups.some((g) => g.length === group.length && g.every((one) => group.includes(one)));
    if (!isThere && !group.includes(bus)) groups.push(group);
  };
  for (const inputs of bus.passed) add(inputs);
  for (const runs of switched(bus.up)) add(runs.map((run) => run.from));
  return groups;
}

/** Runs onto a bus by the switches that keep them apart: those of which all pass one switch exclude each other. */
function switched(runs: readonly SiteRun[]): readonly (readonly SiteRun[])[] {
  const groups: { runs: SiteRun[]; common: readonly string[] }[] = [];
  for (const run of runs) {
    const group = groups.find((g) => g.common.some((tag) => run.switches.includes(tag)));
    if (group) {
      group.runs.push(run);
      group.common = group.common.filter((tag) => run.switches.includes(tag));
    } else groups.push({ runs: [run], common: run.switches });
  }
  return groups.map((g) => g.runs);
}

/** What feeds a bus by itself, and what feeds back to it from behind the rows and switches that it feeds. */
function feedsBack(bus: FaultBus, bound: TransformerBound): Fed {
  const behind = (one: FaultBus): FaultBus[] => [
    ...one.lower.map((port) => busOf(port, 'below', bound)),
    ...one.down.map((run) => busOf(run.to, 'above', bound)),
  ];
  const known = {
    of: (one: FaultBus) => one.feedsBack,
    keep: (one: FaultBus, fed: Fed) => (one.feedsBack = fed),
  };
  return workedOut(bus, known, behind, (one) => {
    const found = gathered();
    for (const source of one.sources) addFeed(found, source);
    for (const port of one.lower) {
      const lower = busOf(port, 'below', bound);
      enter(found, lower, port.equipment.tag, lower.up);
    }
    for (const run of one.down) {
      const lower = busOf(run.to, 'above', bound);
      const others = lower.up.filter((up) => !up.switches.some((tag) => run.switches.includes(tag)));
      enter(found, lower, '', others);
    }
    return found;
  });
}

/**
 * Adds what feeds back from a bus, and what else feeds that one in parallel with the way that leads there.
 * @param by tag of the row that leads there, whose figure is ahead of that bus
 * @param parallel runs that feed that bus at the same time
 */
function enter(found: Gathered, lower: FaultBus, by: string, parallel: readonly SiteRun[]): void {
  addAll(found, lower.feedsBack);
  for (const one of lower.given) if (one.tag !== by) addFeed(found, one);
  // How much of it comes back isn't worked out: two supplies in parallel below another are no plan that is built.
  for (const run of parallel) found.unknown.set(run.from.equipment.tag, 'passes-on');
  for (const [input] of lower.passed) if (input) found.unknown.set(input.equipment.tag, 'passes-on');
}

function gathered(from?: Fed): Gathered {
  return { feeds: new Map(from?.feeds), apart: new Map(from?.apart), unknown: new Map(from?.unknown) };
}

function addFeed(to: Gathered, { tag, source }: Feed): void {
  if (typeof source === 'string') to.unknown.set(tag, source);
  else to.feeds.set(tag, source);
}

function addAll(to: Gathered, from: Fed | undefined): void {
  for (const [tag, one] of from?.feeds ?? []) to.feeds.set(tag, one);
  for (const [tag, one] of from?.apart ?? []) to.apart.set(tag, one);
  for (const [tag, why] of from?.unknown ?? []) to.unknown.set(tag, why);
}

function sumOf({ feeds }: Fed): number {
  let sum = 0;
  for (const one of feeds.values()) sum += one.fact.value;
  return sum;
}
