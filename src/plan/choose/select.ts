import { statedLead, statedLeadFact } from '../context/fitted.js';
import { leadVoltage, leadVoltageByLength } from '../../electrical/leads.js';
import { takenFrom } from '../../electrical/working.js';
import type { Catalogue, Part } from '../../model/catalogue.js';
import type { PlacedNote } from '../../model/open-item.js';
import { isNec } from '../../model/editions.js';
import { kiloamperes, metres, volts } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import { CLAMPING_RULE } from '../../rules/rulebook.js';
import { about } from '../../model/message.js';
import { CHOOSE_MESSAGES } from '../../model/messages/choose.js';
import { calculation, type Calculated } from '../context/calculation.js';
import { assess, choosePart, type Candidate, type Specification, type Rejection } from './choose.js';
import { asksFor, isClassOneAsked, specificationOf } from './requirements.js';
import { suppliesOf } from './indicate.js';
import { leadLimit } from './lead-limit.js';
import { longLead } from './long-lead.js';
import { reachWith } from './reach.js';
import { whereIs } from './where.js';
import { memo } from '../context/memo.js';
import { leadsFrom, plannedLeads } from './planned-lead.js';
import { overcurrentPorts, type OvercurrentPort } from '../rate/overcurrent-place.js';
import { leadsByMetal, leadsToPlan, type MetalLeads } from '../../rules/smallest-lead.js';
import type { Requirement } from '../rate/rate.js';
import type { JobContext } from '../context/job-context.js';
import { thinLead } from './thin-lead.js';
import type { Placement } from '../context/verdict.js';
import { wireHousings, type PortWiring, type WiredChannel } from '../rate/wire.js';

const NOT_KNOWN = reason('asks/not-known');
const HOLDS_NOT_STATED = reason('holds/not-stated');

/** A placement with what it asks, how it is wired, and the part that was chosen. */
export interface Selected {
  readonly placement: Placement;
  readonly requirement: Requirement;
  readonly wirings: readonly PortWiring[];
  /** The channels of each of its housings. */
  readonly housings: readonly (readonly WiredChannel[])[];
  readonly specification: Specification | undefined;
  readonly part: Part | undefined;
  readonly byHand: boolean;
  /** What the list says is there already; `` new. */
  readonly existing: string;
  readonly rejected: readonly Rejection[];
  /** What each port tells of the overcurrent device. */
  readonly overcurrent: readonly OvercurrentPort[];
  /** The smallest leads of the part, one a metal that its terminals are for; empty: no part, or no figure is known. */
  readonly leads: readonly MetalLeads[];
  /** How the part holds against the rules; undefined: no part, or what the place asks isn't known. */
  readonly candidate: Candidate | undefined;
  readonly notes: readonly PlacedNote[];
}

/**
 * Chooses the part of one placement: what is there already, what the list chose by hand, else the best of the catalogue.
 * @param catalogue undefined: there is none, so everything is placed and rated without parts
 */
export function selectPart(
  job: JobContext,
  catalogue: Catalogue | undefined,
  placement: Placement,
  requirement: Requirement,
  wirings: readonly PortWiring[],
): Selected {
  const overcurrent = overcurrentPorts(job, placement);
  const specification = specificationOf(job, placement, requirement, wirings, overcurrent);
  const places = overcurrent.map((one) => one.place);
  const basis = job.site.basis.value;
  const classOneAsked = isClassOneAsked(wirings);
  const { facts } = placement.subject;
  const fitted = placement.fitted?.part;
  const existing = fitted === undefined ? (facts.existing?.value ?? '') : '';
  const byHand = existing === '' ? (fitted ?? facts.protector?.value ?? '') : '';
  const notes: PlacedNote[] = [];
  const done = (part: Part | undefined, rejected: readonly Rejection[], candidate?: Candidate): Selected => ({
    placement,
    requirement,
    wirings,
    housings: wireHousings(wirings, part?.channels),
    specification,
    part,
    byHand: byHand !== '' && part !== undefined,
    existing,
    rejected,
    overcurrent,
    leads: candidate?.leads ?? (part ? leadsByMetal({ basis, classOneAsked, places, part }) : []),
    candidate,
    notes,
  });
  const { tag } = placement.subject;
  const at = whereIs(placement);
  if (existing !== '' || byHand !== '') {
    const named = existing !== '' ? existing : byHand;
    const part = partNamed(catalogue, named);
    if (existing !== '' && !part) {
      const asks = specification ? asksFor(specification) : NOT_KNOWN;
      notes.push(
        about(
          CHOOSE_MESSAGES.existingUnknown,
          { at, existing: existing.slice(0, 80), asks },
          tag,
          'existing',
        ),
      );
      return done(undefined, []);
    }
    if (!part) {
      if (catalogue)
        notes.push(about(CHOOSE_MESSAGES.byHandUnknown, { at, part: byHand.slice(0, 80) }, tag, 'protector'));
      return done(undefined, []);
    }
    if (!specification) return done(part, []);
    const candidate = assess(part, specification, job.settings);
    const fails = candidate.failures.map((f) => f.because);
    if (fails.length > 0) {
      const message = existing !== '' ? CHOOSE_MESSAGES.existingFails : CHOOSE_MESSAGES.byHandFails;
      notes.push(
        about(message, { at, part: part.part, fails }, tag, existing !== '' ? 'existing' : 'protector'),
      );
    }
    sayOf(job, { requirement, placement, wirings }, candidate, notes);
    return done(part, [], candidate);
  }
  if (!catalogue || !specification) return done(undefined, []);
  const choice = choosePart(catalogue, specification, job.settings);
  if (!choice.best) {
    const tt =
      specification.earthing === 'TT' && specification.basis === 'iec' && specification.circuit === 'power';
    const message = tt ? CHOOSE_MESSAGES.noneThreePlusOne : CHOOSE_MESSAGES.noneFits;
    notes.push(
      about(message, { at, asks: asksFor(specification), nearest: choice.nearest ?? null }, tag, ''),
    );
    return done(undefined, choice.rejected);
  }
  sayOf(job, { requirement, placement, wirings }, choice.best, notes);
  return done(choice.best.part, choice.rejected, choice.best);
}

/** The part as typed; else one that differs in case and outer blanks only. */
function partNamed(catalogue: Catalogue | undefined, named: string): Part | undefined {
  const fold = (name: string): string => name.trim().toLowerCase();
  return (
    catalogue?.parts.find((p) => p.part === named) ??
    catalogue?.parts.find((p) => fold(p.part) === fold(named))
  );
}

/** What a person has to confirm about a chosen part. */
function sayOf(
  job: JobContext,
  { requirement, placement, wirings }: Pick<Selected, 'requirement' | 'placement' | 'wirings'>,
  candidate: Candidate,
  notes: PlacedNote[],
): void {
  const { part } = candidate;
  const { tag } = placement.subject;
  const at = whereIs(placement);
  for (const { says } of candidate.shortfalls) {
    const p = { at, part: part.part, shortfall: says };
    if (says.code === 'enclosure/other-scale') {
      notes.push(about(CHOOSE_MESSAGES.enclosureScale, p, tag, 'outdoors'));
      continue;
    }
    if (says.code === 'neutral-path/not-stated') {
      notes.push(about(CHOOSE_MESSAGES.neutralPath, p, tag, ''));
      continue;
    }
    if (says.code === 'level/near-withstand' && says.values.share === null) {
      const { basis } = job.site;
      const leads = plannedLeads(
        part,
        statedLead(placement),
        basis.value,
        job.settings,
        leadsToPlan(candidate.leads),
      );
      const limit = leadLimit(part, requirement.withstand?.value, leads, job.settings.thresholds.longLead);
      const more = { longest: limit > 0 ? metres(limit) : null, basis: basis.value };
      notes.push(about(CHOOSE_MESSAGES.mayNotProtect, { ...p, ...more }, tag, 'impulse_withstand'));
      continue;
    }
    notes.push(about(CHOOSE_MESSAGES.shortfall, p, tag, 'impulse_withstand'));
  }
  const long = longLead(job, { placement, requirement, leads: candidate.leads }, part);
  if (long) notes.push(long);
  if (!isNec(job.site.basis.value) && part.iecClass === null) {
    // 534.4.10 goes by the class: where none is stated the leads are those of the class that the place asks for.
    const leads = wirings.some((w) => w.facts.classOneAsked) ? 'I' : 'II';
    notes.push(about(CHOOSE_MESSAGES.listedToUlOnly, { at, part: part.part, leads }, tag, ''));
  }
  if (part.indicator === 'flag' && (part.goodFlag === '' || part.usedFlag === '')) {
    notes.push(about(CHOOSE_MESSAGES.flagNotTold, { at, part: part.part }, tag, ''));
  }
  const thin = thinLead(part, job.site.basis.value, wirings, leadsToPlan(candidate.leads));
  if (thin) notes.push(about(CHOOSE_MESSAGES.leadThin, { at, part: part.part, ...thin }, tag, ''));
  if (requirement.sccrState === 'unknown') {
    const has = requirement.current === 'ac' ? part.sccr : part.sccrDc;
    const holds = has === null ? HOLDS_NOT_STATED : reason('holds/up-to', { rating: kiloamperes(has) });
    const field = requirement.circuit === 'array' ? 'isc_stc' : 'fault_current';
    // The utility knows what it can drive into a fault; of a turbine, a battery or a module its maker does.
    const fromUtility =
      requirement.circuit === 'power' &&
      placement.ports.some((port) => suppliesOf(port).utility) &&
      job.site.equipments.some((e) => e.kind === 'service' && !e.facts.fault_current);
    // What an inverter or a panel passes on is said by the list, not by its maker.
    const byList = requirement.sccrBecause.code === 'fault-current/passed-on-by';
    const who = byList ? 'designer' : fromUtility ? 'utility' : 'maker';
    const p = { at, because: requirement.sccrBecause, part: part.part, holds, who } as const;
    notes.push(about(CHOOSE_MESSAGES.faultCurrentUnknown, p, tag, field));
  }
}

/** Voltages of a chosen part's leads; V. */
interface LeadVoltages {
  readonly lead: number;
  readonly leadCalculation: Calculated;
  readonly leadAtHalfMetre: number;
  readonly leadAtOneMetre: number;
  /** V that a further 0.1 m adds at most, as far as 1 m: the step grows with the length. */
  readonly perTenCentimetres: number;
}

/** Voltages of a chosen part's leads, and what is left of the withstand; V. */
export interface PartFigures extends LeadVoltages {
  readonly margin: number | null;
}

const leadVoltages = memo<LeadVoltages>();

function leadVoltagesOf(
  part: Part,
  leads: ReturnType<typeof plannedLeads>,
  from: ReturnType<typeof leadsFrom>,
): LeadVoltages {
  const key = `${leads.length}|${leads.diameter}|${leads.peak}|${JSON.stringify(from)}`;
  return leadVoltages(part, key, () => {
    const { upBasis } = part;
    const { value: lead, working } = leadVoltage({ ...leads, upBasis });
    const at = leadVoltageByLength({ ...leads, upBasis });
    const leadAtHalfMetre = at(0.5);
    const leadAtOneMetre = at(1);
    const title = reason('calculation/leads', {
      atHalfMetre: volts(leadAtHalfMetre),
      atOneMetre: volts(leadAtOneMetre),
    });
    return {
      lead,
      leadCalculation: calculation(
        CLAMPING_RULE.id,
        title,
        takenFrom(working, { l: from.length, d: from.diameter }),
      ),
      leadAtHalfMetre,
      leadAtOneMetre,
      perTenCentimetres: Math.max(at(leads.length + 0.1) - lead, leadAtOneMetre - at(0.9)),
    };
  });
}

/** The figures of a chosen part at its place. */
export function partFigures(job: JobContext, selected: Selected, part: Part): PartFigures {
  const stated = statedLeadFact(selected.placement);
  const smallest = leadsToPlan(selected.leads);
  const leads = plannedLeads(part, stated?.value, job.site.basis.value, job.settings, smallest);
  const voltages = leadVoltagesOf(part, leads, leadsFrom(part, stated, smallest));
  const withstand = selected.requirement.withstand?.value;
  const margin = withstand === undefined || part.up === null ? null : withstand - part.up - voltages.lead;
  const { lead, leadCalculation, leadAtHalfMetre, leadAtOneMetre, perTenCentimetres } = voltages;
  return { lead, leadCalculation, leadAtHalfMetre, leadAtOneMetre, perTenCentimetres, margin };
}

/**
 * How far along the cable a chosen part covers.
 * @param withstand V, of the equipment that is to be covered
 * @param run m, of the run that it is asked for; undefined: none, or not stated
 * @returns m; null: not limited within its run; undefined: not known
 */
export function reachOf(
  job: JobContext,
  selected: Selected,
  withstand: number | undefined,
  run: number | undefined,
): number | null | undefined {
  const { part } = selected;
  if (!part || part.up === null) return undefined;
  return reachWith(job, part.up, partFigures(job, selected, part).lead, withstand, run);
}
