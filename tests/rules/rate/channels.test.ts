import { channels } from '../../../src/rules/rate/channels.js';
import { fitTable } from '../table.js';

// Common practice, no source: three phases on two-channel protectors take a pair, one phase doubled.
export const table = fitTable(import.meta.url, channels, [
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}: two conductors on two channels`,
    given: { basis, conductors: 2, spareRoom: 0 },
    part: { channels: 2 },
  })),
  {
    name: 'three conductors on two-channel parts: one channel left, and a line may be doubled',
    given: { conductors: 3, spareRoom: 1 },
    part: { channels: 2 },
  },
  {
    name: 'three conductors on two-channel parts, and nothing may be doubled',
    given: { conductors: 3, spareRoom: 0 },
    part: { channels: 2 },
    rejects: '2 channels for 3 conductors leave 1 unwired',
  },
  {
    name: 'two poles on a three-channel part: DC never doubles',
    given: { conductors: 2, spareRoom: 0 },
    part: { channels: 3 },
    rejects: '3 channels for 2 conductors leave 1 unwired',
  },
  {
    name: 'one conductor on four channels, one of which N may take',
    given: { conductors: 1, spareRoom: 1 },
    part: { channels: 4 },
    rejects: '4 channels for 1 conductor leave 2 unwired',
  },
  {
    name: 'one channel each: as many housings as conductors',
    given: { conductors: 3, spareRoom: 0 },
    part: { channels: 1 },
  },
  {
    name: 'ports that share: every conductor in one housing',
    given: { conductors: 2, spareRoom: 2, oneHousing: true },
    part: { channels: 2 },
  },
  {
    name: 'ports that share: fewer channels than conductors',
    given: { conductors: 4, spareRoom: 2, oneHousing: true },
    part: { channels: 2 },
    rejects: '2 channels for the 4 conductors that share it',
  },
  {
    name: 'ports that share: one channel more than may be wired',
    given: { conductors: 2, spareRoom: 0, oneHousing: true },
    part: { channels: 3 },
    rejects: '3 channels for 2 conductors leave 1 unwired',
  },
]);
