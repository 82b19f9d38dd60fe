import type { Site, SiteEquipment } from '../../model/site.js';
import type { ArrayFacts, BatteryFacts, ConverterFacts, TurbineFacts } from '../../rules/rating-facts.js';
import { pvCircuitsOf } from '../../site/pv-circuits.js';

/** What the rating rules may know of an array. */
export function arrayFacts(site: Site, e: SiteEquipment): ArrayFacts {
  const { facts } = e;
  return {
    tag: e.tag,
    vocStc: facts.voc_stc,
    iscStc: facts.isc_stc,
    modulesInSeries: facts.modules_in_series,
    stringsInParallel: facts.strings_in_parallel,
    coefficient: facts.voc_coefficient,
    cells: facts.cells,
    technology: facts.module_technology,
    optimizers: facts.optimizers?.value === true,
    openCircuitVoltage: facts.open_circuit_voltage,
    ...pvCircuitsOf(site, e),
    unreadable: e.row.unreadable,
  };
}

/** What the rating rules may know of a turbine. */
export function turbineFacts(e: SiteEquipment): TurbineFacts {
  return {
    tag: e.tag,
    kind: e.kind,
    output: e.facts.output?.value,
    openCircuitVoltage: e.facts.open_circuit_voltage,
    unreadable: e.row.unreadable,
  };
}

/** What the rating rules may know of a converter that a DC port leads to. */
export function converterFacts(e: SiteEquipment): ConverterFacts {
  const acOut = e.facts.ac_out?.value;
  return {
    tag: e.tag,
    kind: e.kind,
    maxDcVoltage: e.facts.max_dc_voltage,
    isolated: e.facts.isolated?.value,
    acOut: acOut === 'unused' ? undefined : acOut,
    unreadable: e.row.unreadable,
  };
}

/** What the rating rules may know of a battery. */
export function batteryFacts(e: SiteEquipment): BatteryFacts {
  const { facts } = e;
  return {
    tag: e.tag,
    voltage: facts.battery_voltage,
    chemistry: facts.battery_chemistry,
    cells: facts.cells,
    highest: facts.open_circuit_voltage ?? facts.max_dc_voltage,
    unreadable: e.row.unreadable,
  };
}
