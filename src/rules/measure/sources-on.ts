import { reason, type Reason } from '../../model/reason.js';
import type { MeasuredPlace } from '../../model/reasons/measure.js';

/** A converter that hangs together with a place, over whatever cables. */
export interface ConverterAround {
  readonly tag: string;
  /** Of a DC place: what is measured there leads to it. */
  readonly takes: boolean;
  /** Of an AC place: it gives it its voltage. */
  readonly feeds: boolean;
  /** Turbines that it loads. */
  readonly turbines: readonly string[];
  /** Batteries and supplies without which it loads none, and what those need. */
  readonly needs: readonly string[];
}

/** In which state a place is measured: what is known of it. */
export interface SourcesOnFacts {
  readonly of: MeasuredPlace;
  /** What gives the place its voltage: arrays, turbines, batteries, services and generators; of an AC place inverters too. */
  readonly sources: readonly string[];
  readonly converters: readonly ConverterAround[];
  /** What else loads turbines there. */
  readonly diversions: readonly string[];
  /** True where there are more than are named: of those that load a turbine, and of the others. */
  readonly more: { readonly loads: boolean; readonly off: boolean };
  /** Turbines of this place whose voltage nobody states. */
  readonly unknown: readonly string[];
}

/**
 * In which state the readings of a place are taken: what is on, which converters stay on since they load a turbine or feed the place,
 * which are off. What stays on for a turbine's sake needs its battery, or the supply that it keeps step with: that stays on too. An
 * array is read with its own converter off, or its string stands at its working point; a turbine that this would unload, at once or by
 * taking the supply from what loads it, is stopped before. Where the voltage of a turbine isn't known no figure can be told and no meter chosen: nothing is opened.
 * Source: common practice, no source.
 */
export function sourcesOn(f: SourcesOnFacts): Reason {
  const { of, sources, converters, diversions, more, unknown } = f;
  if (unknown.length > 0) return reason('measure-state/do-not-open', { turbines: unknown });
  if (of === 'control') return reason('measure-state/control');
  const takers = converters.filter(({ takes }) => takes);
  const isTurbine = of === 'turbine' || of === 'both';
  const unloaded = of === 'sun' ? takers : [];
  const goesOff = new Set(tagsOf(unloaded));
  const isLost = (one: ConverterAround): boolean => one.needs.some((tag) => goesOff.has(tag));
  const isOn = (one: ConverterAround): boolean => one.feeds || (isTurbine && one.takes);
  const staysOn = (one: ConverterAround): boolean =>
    !isOn(one) && !unloaded.includes(one) && one.turbines.length > 0 && !isLost(one);
  const stopped = converters.filter((one) => unloaded.includes(one) || isLost(one));
  const stops = unique(stopped.flatMap(({ turbines }) => turbines));
  const loads = converters.filter(staysOn);
  const isDiverting = isTurbine || loads.length > 0 || stops.length > 0;
  const needs = isTurbine ? unique(takers.flatMap((one) => one.needs)) : [];
  const named = new Set([...sources, ...needs, ...tagsOf(takers), ...tagsOf(loads)]);
  const kept = unique(loads.flatMap((one) => one.needs)).filter((tag) => !named.has(tag));
  const isKept = new Set([...needs, ...kept]);
  const isOff = (one: ConverterAround): boolean =>
    !isOn(one) && !staysOn(one) && !unloaded.includes(one) && !isKept.has(one.tag);
  return reason('measure-state/sources-on', {
    of,
    sources,
    stops,
    here: isTurbine ? tagsOf(takers) : [],
    needs,
    loads: [...tagsOf(loads), ...(isDiverting ? diversions : [])],
    kept,
    off: [...tagsOf(unloaded), ...tagsOf(converters.filter(isOff))],
    more,
  });
}

const unique = (tags: readonly string[]): readonly string[] => [...new Set(tags)];
const tagsOf = (converters: readonly ConverterAround[]): readonly string[] =>
  converters.map(({ tag }) => tag);
