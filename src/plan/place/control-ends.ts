import { reason } from '../../model/reason.js';
import type { PlacedNote } from '../../model/open-item.js';
import type { SitePort } from '../../model/site.js';
import { CONTROL_RULE, EXEMPTION_RULE } from '../../rules/rulebook.js';
import { placementFacts, type JobContext } from '../context/job-context.js';
import { isOpen, strongest, waive, type Placement, type Refusal, type Verdict } from '../context/verdict.js';

const END_WAIVED = reason('control-end/waived');

/** The other end of a control circuit that has a protector: a place of its own for each circuit. */
export function otherEnds(
  job: JobContext,
  verdicts: ReadonlyMap<SitePort, Verdict>,
  notes: PlacedNote[],
): { placements: Placement[]; refusals: Refusal[] } {
  const placements: Placement[] = [];
  const refusals: Refusal[] = [];
  for (const circuit of job.site.equipments) {
    if (circuit.kind !== 'control-circuit') continue;
    const own = circuit.ports[0];
    const verdict = own && verdicts.get(own);
    if (!own || !verdict) continue;
    const decided = CONTROL_RULE.decide(placementFacts(job, own));
    for (const run of own.runs) {
      const port = run.from === own ? run.to : run.from;
      if (port.equipment.kind === 'control-circuit') continue;
      // These terminals are the circuit's: what its row waives counts, not what the row that it ends at does.
      const facts = { ...placementFacts(job, port), protect: circuit.facts.protect?.value };
      if (decided.outcome !== 'placed') {
        const because = reason('control-end/refused', { circuit: circuit.tag, reason: decided.because });
        refusals.push({ port, rule: CONTROL_RULE, because, open: isOpen(decided) });
        continue;
      }
      const because = reason('control-end/placed', { circuit: circuit.tag, reason: decided.because });
      const reasons = [{ rule: CONTROL_RULE, strength: decided.strength, because }];
      const there: Verdict = { port, reasons, refusals: [] };
      waive(there, facts, notes);
      if (circuit.facts.protect?.value === false || there.reasons.length === 0) {
        refusals.push({ port, rule: EXEMPTION_RULE, because: END_WAIVED });
      } else {
        placements.push({
          ports: [port],
          subject: circuit,
          reasons: there.reasons,
          strength: strongest(there.reasons),
        });
      }
    }
  }
  return { placements, refusals };
}
