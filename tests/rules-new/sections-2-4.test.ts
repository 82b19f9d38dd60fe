import { describe, expect, it } from 'vitest';
import { SECTION_2 } from './section-2.js';
import { SECTION_3, SECTION_4 } from './section-3-4.js';

// What is new in rules.md since the first packs, as its list of novelties has it: sections 2 to 4, a phrase between semicolons each.
const NEW = {
  2: 'unknown Voc; above even the assumed withstand; between two conductors; N-PE path (In, Iimp); fault current of sources, of ports, of sources together and apart, backfeed; reach on level plus leads, category II at services and panels; 2.10 device of each kind of circuit, corner, high leg, shared housing, ahead of the disconnect, the circuit’s own device, no device, smallest lead by metal; 2.11 long leads; choice: 10 kA at AC ends outdoors',
  3: 'measuring bands by kind of conductor, pole to pole, ground fault, meter; isolation in order, the way back, sources not all known, stays live; no ground bar; colours by voltage, positive-ground plants',
  4: 'flags `good`; floating battery; `sun, inverter on`',
};
const SECTIONS = { 2: SECTION_2, 3: SECTION_3, 4: SECTION_4 };

describe.each([2, 3, 4] as const)('rules.md section %i', (section) => {
  const contrasts = Object.entries(SECTIONS[section]);

  it('has contrasts for each phrase of its novelties, and for nothing else', () => {
    expect(contrasts.map(([phrase]) => phrase)).toEqual(NEW[section].split('; '));
    for (const [phrase, some] of contrasts) expect([phrase, some.length > 0]).toEqual([phrase, true]);
  });

  describe.each(contrasts)('%s', (_, some) => {
    it.each(some)('$shows', ({ plan, sees, fires, spares }) => {
      expect(sees(plan(fires[0]))).toEqual(fires[1]);
      expect(sees(plan(spares[0]))).toEqual(spares[1]);
      // Were both alike, the cell would decide nothing.
      expect(fires[1]).not.toEqual(spares[1]);
    });
  });
});
