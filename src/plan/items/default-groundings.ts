import type { RowField } from '../../model/list.js';
import { reason, type Reason } from '../../model/reason.js';
import type { SiteEquipment, SitePort } from '../../model/site.js';
import { batteriesOn } from '../../site/battery-bus.js';
import { ultimateSources } from '../../site/inputs.js';
import { poleGrounding, type PoleGrounding } from '../choose/indicate.js';
import type { Selected } from '../choose/select.js';
import type { JobContext } from '../context/job-context.js';
import type { PortWiring } from '../rate/wire.js';
import type { SettledUses } from './settled.js';

const NOT_KNOWN = reason('default-value/not-known');

/** What a grounding that nobody states decides. */
const VOLTAGE_AND_LIGHTS = reason('default-decides/voltage-and-lights');
const DARK_LIGHT = reason('default-decides/dark-light');
const RECORDED_LIGHTS = reason('default-decides/recorded-lights');
const SPARE_CHANNEL = reason('default-decides/spare-channel');

/**
 * `value`: a word of the contract, or a reason that says it; `why`: what it decides; `isMade`: false where what the company settled for
 * these rows is not what stands there.
 */
export type Say = (
  field: RowField,
  value: string | Reason,
  rows: readonly SiteEquipment[],
  why: Reason,
  isMade?: boolean,
) => void;

/**
 * Says by which grounding that nobody states a voltage was rated or a light told.
 * @param power ports with a protector of a power circuit
 * @param uses gets what the company settled
 * @param say gets the rest, to be confirmed
 */
export function sayGroundings(
  job: JobContext,
  selected: readonly Selected[],
  power: readonly SitePort[],
  uses: SettledUses,
  say: Say,
): void {
  // Settled for what feeds a port, whatever kind stands there.
  const byDefault = power.filter((p) => {
    const { byDefault: is, from } = job.groundingAt(p);
    return p.system && is && !uses.note(from, [p.equipment.tag]);
  });
  for (const value of ['solid', 'none'] as const) {
    const rows = byDefault.filter((p) => job.groundingAt(p).grounding === value).map((p) => p.equipment);
    say('system_grounding', value, rows, VOLTAGE_AND_LIGHTS, false);
  }
  const dc = selected.filter((s) => s.requirement.circuit === 'array' || s.requirement.circuit === 'battery');
  const poles = new Map<PoleGrounding, Set<SiteEquipment>>();
  for (const one of dc) {
    for (const { port } of one.wirings) {
      for (const { equipment, value } of dcGroundingByDefault(port)) {
        // What another row states of the same conductors goes before what is settled for this one.
        const settled = equipment.row.settled?.dc_grounding;
        if (settled?.value === value && uses.note(settled, [equipment.tag])) continue;
        const rows = poles.get(value) ?? new Set();
        rows.add(equipment);
        poles.set(value, rows);
      }
    }
  }
  for (const [value, rows] of poles)
    say('dc_grounding', value === 'unknown' ? NOT_KNOWN : value, [...rows], DARK_LIGHT, false);
  const control = selected.filter(
    (s) => s.requirement.circuit === 'control' && !s.placement.subject.facts.dc_grounding,
  );
  say(
    'dc_grounding',
    NOT_KNOWN,
    control.map((s) => s.placement.subject),
    RECORDED_LIGHTS,
  );
}

/** Whether N is linked to ground decides whether it has a channel: by default at a service, nowhere else. */
export function sayBonds(selected: readonly Selected[], nec: boolean, uses: SettledUses, say: Say): void {
  const open: PortWiring[] = [];
  for (const { wirings } of selected)
    for (const wiring of wirings) {
      const { cls, equipment } = wiring.port;
      if (wiring.neutral.neutral === 'none' || equipment.facts.n_pe_link) continue;
      const settled = equipment.row.settled?.n_pe_link;
      const isFed = equipment.kind === 'transformer' && cls === 'ac-in';
      const isHead = cls === 'service' || equipment.kind === 'transformer';
      const decides = (nec || isHead) && !isFed && settled?.value === wiring.facts.bondedHere;
      if (!decides || !uses.note(settled, [equipment.tag])) open.push(wiring);
    }
  const rows = (bonded: boolean): SiteEquipment[] =>
    open.filter((w) => w.facts.bondedHere === bonded).map((w) => w.port.equipment);
  say('n_pe_link', 'yes', rows(true), SPARE_CHANNEL, false);
  // With iec N has a channel everywhere else, linked or not.
  if (nec) say('n_pe_link', 'no', rows(false), SPARE_CHANNEL, false);
}

/** The sources and batteries behind a DC port that state no grounding, each with the default that stands in. */
function dcGroundingByDefault(port: SitePort): readonly { equipment: SiteEquipment; value: PoleGrounding }[] {
  const isBus = port.cls === 'battery' || port.cls === 'dc-bus';
  const rows = isBus ? batteriesOn(port) : ultimateSources(port);
  return rows
    .filter((e) => !e.facts.dc_grounding)
    .map((equipment) => ({ equipment, value: poleGrounding(port, equipment) }));
}
