import { AC_SYSTEM_DATA, nominalToGround } from '../../electrical/ac-systems.js';
import { volts, type Quantity } from '../../model/quantity.js';
import { reason, type Reason } from '../../model/reason.js';
import type { SitePort } from '../../model/site.js';
import type { Conductor } from '../../model/words.js';
import { drivenBy, ultimateSources } from '../../site/inputs.js';
import { poleGrounding } from '../choose/indicate.js';
import type { Selected } from '../choose/select.js';
import type { JobContext } from '../context/job-context.js';
import type { WiredChannel } from '../rate/wire.js';

const NEAR_ZERO = reason('expected-voltage/near-zero');
const GROUNDED_POLE = reason('expected-voltage/grounded-pole');
const SYSTEM_NOT_STATED = reason('expected-voltage/system-not-stated');
const NOT_KNOWN = reason('expected-voltage/not-known');

/** True where a sound system shows next to no voltage from a conductor to ground: a grounded pole, or N of a grounded system. */
export function isNearZero(job: JobContext, selected: Selected, channel: WiredChannel): boolean {
  const { port, conductor } = channel;
  const { circuit } = selected.requirement;
  if (circuit === 'power') return nominalOf(job, port, conductor, selected) === 0;
  if (circuit !== 'array' && circuit !== 'battery') return false;
  return poleGrounding(port, selected.placement.subject) === conductor;
}

/** What a sound system shows at a conductor, with its sources on, before the protector is connected. */
export function expectedVoltage(job: JobContext, selected: Selected, channel: WiredChannel): Reason {
  const { port } = channel;
  const { circuit, mcov } = selected.requirement;
  const most = mcov ? volts(mcov.value) : null;
  switch (circuit) {
    case 'power':
      return port.system ? expectedAc(job, port, channel.conductor, selected) : SYSTEM_NOT_STATED;
    case 'array':
      return expectedDc(selected, channel, { of: drivenBy(ultimateSources(port)), most });
    case 'turbine':
      return reason('expected-voltage/turbine-phase', { most });
    case 'battery':
      return expectedDc(selected, channel, { of: 'battery', most });
    case 'control':
      return reason('expected-voltage/control-circuit', { most });
  }
}

/** What all of a DC circuit's voltage is, and the most that it may be. */
interface Whole {
  readonly of: 'sun' | 'turbine' | 'both' | 'battery';
  readonly most: Quantity | null;
}

/** Of a pair with a grounded pole the one reads nothing and the other all of it; of a floating pair either may read any part. */
function expectedDc({ placement }: Selected, { port, conductor }: WiredChannel, whole: Whole): Reason {
  const pole = poleGrounding(port, placement.subject);
  if (pole === 'unknown') return reason('expected-voltage/grounding-not-known', whole);
  if (pole === 'floating') return reason('expected-voltage/floating-pair', whole);
  return conductor === pole ? GROUNDED_POLE : reason('expected-voltage/whole', whole);
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
    whole: wiring.facts.whole,
    grounding: wiring.facts.grounding,
    conductor,
    basis: basis.value,
    earthing: earthing.value,
  });
}

function expectedAc(job: JobContext, port: SitePort, conductor: Conductor, selected: Selected): Reason {
  const nominal = nominalOf(job, port, conductor, selected);
  if (nominal === undefined || !port.system) return NOT_KNOWN;
  if (nominal === 0) return NEAR_ZERO;
  if (nominal !== null) return reason('expected-voltage/about', { nominal: volts(nominal) });
  const between = volts(AC_SYSTEM_DATA[port.system].betweenConductors);
  return reason('expected-voltage/floating-system', { between });
}
