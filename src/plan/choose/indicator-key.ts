import type { IndicatorFacts } from '../../rules/indicator-facts.js';

/** Every fact, in one order: channels of which all of them are alike show the same. */
export function indicatorKey(f: IndicatorFacts): string {
  return `${bitsOf(f)}|${f.circuit}|${f.current}|${f.conductor}|${f.liftedNeutral}|${f.frequency}|${f.indicator}|${f.indicatorMinVoltage}|${f.usualVoltage}`;
}

/** What is yes or no of them, a bit each. */
function bitsOf(f: IndicatorFacts): number {
  return (
    Number(f.grounded) |
    (Number(f.floating) << 1) |
    (Number(f.fedByUtility) << 2) |
    (Number(f.fedBySource) << 3) |
    (Number(f.turbineDriven) << 4) |
    (Number(f.sunAndWind) << 5) |
    (Number(f.rapidShutdown) << 6) |
    (Number(f.turbineOutputKnown) << 7) |
    (Number(f.groundingUnknown) << 8)
  );
}
