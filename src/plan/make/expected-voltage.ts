import { AC_SYSTEM_DATA, nominalToGround } from '../../electrical/ac-systems.js';
import type { SitePort } from '../../model/site.js';
import type { Conductor } from '../../model/words.js';
import { figure } from '../../words/figures.js';
import { drivenBy, ultimateSources } from '../../site/inputs.js';
import { poleGrounding } from '../choose/indicate.js';
import type { Selected } from '../choose/select.js';
import type { JobContext } from '../context/job-context.js';
import type { WiredChannel } from '../rate/wire.js';

/** The whole voltage of a DC circuit, by what drives it. */
const DRIVEN = {
  sun: 'the voltage of the string, which changes with the sun',
  turbine: 'the voltage of the turbine, which changes with its speed',
  both: 'the voltage of the array and the turbine, which changes with the sun and the turbine’s speed',
};

/** True where a sound system shows next to no voltage from a conductor to ground: a grounded pole, or N of a grounded system. */
export function isNearZero(job: JobContext, selected: Selected, channel: WiredChannel): boolean {
  const { port, conductor } = channel;
  const { circuit } = selected.requirement;
  if (circuit === 'power') return nominalOf(job, port, conductor, selected) === 0;
  if (circuit !== 'array' && circuit !== 'battery') return false;
  return poleGrounding(port, selected.placement.subject) === conductor;
}

/** What a sound system shows at a conductor, with its sources on, before the protector is connected. */
export function expectedVoltage(job: JobContext, selected: Selected, channel: WiredChannel): string {
  const { port } = channel;
  const { circuit } = selected.requirement;
  const worst = selected.requirement.mcov;
  const most = worst
    ? `at most ${figure(worst.value, 'V')}`
    : 'at most what the maker states, which isn’t known here';
  switch (circuit) {
    case 'power':
      return port.system
        ? expectedAc(job, port, channel.conductor, selected)
        : 'not known: the AC system isn’t stated';
    case 'array':
      return expectedDc(selected, channel, `${DRIVEN[drivenBy(ultimateSources(port))]}, ${most}`);
    case 'turbine':
      return `from near 0 V to ${DRIVEN.turbine}, ${most}`;
    case 'battery':
      return expectedDc(selected, channel, `the voltage of the battery, ${most}`);
    case 'control':
      return `near 0 V or the control voltage, ${most}`;
  }
}

/** Of a pair with a grounded pole the one reads nothing and the other all of it; of a floating pair either may read any part. */
function expectedDc({ placement }: Selected, { port, conductor }: WiredChannel, whole: string): string {
  const pole = poleGrounding(port, placement.subject);
  if (pole === 'unknown')
    return `not known, since the list grounds its sources differently: from near 0 V to ${whole}`;
  if (pole === 'floating') return `not fixed, since no pole is grounded: from near 0 V to ${whole}`;
  return conductor === pole ? 'near 0 V: this pole is grounded' : whole;
}

/** V to ground (line to neutral in a 3+1 part); null: not fixed; undefined: not known. */
function nominalOf(
  job: JobContext,
  port: SitePort,
  conductor: Conductor,
  selected: Selected,
): number | null | undefined {
  const { system } = port;
  const wiring = selected.wirings.find((w) => w.port === port);
  if (!system || !wiring) return undefined;
  const { basis, earthing } = job.site;
  return nominalToGround({
    system,
    grounding: wiring.facts.grounding,
    conductor,
    basis: basis.value,
    earthing: earthing.value,
  });
}

function expectedAc(job: JobContext, port: SitePort, conductor: Conductor, selected: Selected): string {
  const nominal = nominalOf(job, port, conductor, selected);
  if (nominal === undefined || !port.system) return 'not known';
  if (nominal !== null) return nominal === 0 ? 'near 0 V' : `about ${figure(nominal, 'V')}`;
  return `not fixed, since the system isn’t solidly grounded; ${figure(AC_SYSTEM_DATA[port.system].betweenConductors, 'V')} between conductors`;
}
