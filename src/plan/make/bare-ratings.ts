import type { SitePort } from '../../model/site.js';
import type { JobContext } from '../context/job-context.js';
import { ratePlacement, type Requirement } from '../rate/rate.js';

/** What would be asked of a protector at a port that has none; each port is rated once. */
export function bareRatings(job: JobContext): (port: SitePort) => Requirement {
  const rated = new Map<SitePort, Requirement>();
  return (port) => {
    let found = rated.get(port);
    if (!found) {
      const placement = {
        ports: [port],
        subject: port.equipment,
        reasons: [],
        strength: 'optional',
      } as const;
      rated.set(port, (found = ratePlacement(job, placement)));
    }
    return found;
  };
}
