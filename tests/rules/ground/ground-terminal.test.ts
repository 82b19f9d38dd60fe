import { describe, expect, it } from 'vitest';
import { BASES } from '../../../src/model/editions.js';
import type { Kind, PortClass } from '../../../src/model/words.js';
import { groundTerminal } from '../../../src/rules/ground/ground-terminal.js';
import { say } from '../../../src/words/reasons/say.js';

// Common practice, no source.
describe('the ground terminal of an enclosure without a bar', () => {
  it.each<[PortClass, Kind, boolean, string]>([
    ['terminals', 'control-circuit', false, 'electrode of what the circuit belongs to'],
    ['terminals', 'panel', false, 'electrode of what the circuit belongs to'],
    ['output', 'wind-turbine', true, 'tower’s own electrode'],
    ['output', 'array', true, 'array frame’s own electrode'],
    ['output', 'hydro-turbine', true, 'casing’s own electrode'],
    ['ac-in', 'pump-drive', false, 'casing’s own electrode'],
    ['feeder', 'load', true, 'casing’s own electrode'],
  ])('%s of %s, outdoors %s: %s', (port, kind, outdoors, electrode) => {
    const found = groundTerminal({ basis: 'nec-2023', port, kind, outdoors });
    expect(found && say(found.fit)).toBe(
      'Where this enclosure has no ground bar, fit a ground terminal in it',
    );
    const lands = (found?.lands ?? []).map((one) => say(one));
    expect(lands).toHaveLength(3);
    expect(lands[0]).toBe('the protector’s short ground lead, whose length counts to this terminal');
    expect(lands[1]).toContain(electrode);
    expect(lands[2]).toBe('the equipment grounding conductor that comes with the circuit’s cable');
  });

  it.each<[PortClass, Kind, boolean]>([
    ['feeder', 'load', false],
    ['feeder', 'panel', true],
    ['service', 'service', true],
    ['output', 'combiner', true],
    ['output', 'generator', true],
    ['dc-in', 'charge-controller', false],
    ['battery', 'battery', false],
  ])('%s of %s, outdoors %s: it has a bar', (port, kind, outdoors) => {
    expect(groundTerminal({ basis: 'nec-2023', port, kind, outdoors })).toBeUndefined();
  });

  it.each(BASES)('%s: never an electrode alone, and the crew looks what the cable brings', (basis) => {
    const found = groundTerminal({ basis, port: 'output', kind: 'array', outdoors: true });
    const conductor = basis === 'iec' ? 'the protective conductor' : 'the equipment grounding conductor';
    expect(found && say(found.never)).toBe(
      `Never an electrode alone, without ${conductor} that comes with the circuit’s cable`,
    );
    expect(found && say(found.ask)).toMatch(
      basis === 'iec'
        ? /brings a protective conductor; where/
        : /brings an equipment grounding conductor; where/,
    );
  });
});
