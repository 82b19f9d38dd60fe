import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { inOurUnit, readQuantity, readWireSize, unitOf } from '../../src/read/cell/units.js';

/** Figure in our unit and the unit's symbol, or what is wrong. */
function read(text: string): [number, string] | string {
  const reading = readQuantity(text);
  if (!reading.ok) return reading.problem;
  return reading.unit === null
    ? [reading.figure, '']
    : [inOurUnit(reading.figure, reading.unit), reading.unit.symbol];
}

describe('a figure is read with its unit', () => {
  // Foot and inch: exact, NIST SP 811, appendix B. The rest is decimal.
  test.each<[string, number, string]>([
    ['100 ft', 30.48, 'ft'],
    ['100ft.', 30.48, 'ft'],
    ["100'", 30.48, 'ft'],
    ['100\u2032', 30.48, 'ft'],
    ['100 FEET', 30.48, 'ft'],
    ['12 in', 0.3048, 'in'],
    ['12"', 0.3048, 'in'],
    ['12\u2033', 0.3048, 'in'],
    [`5' 6"`, 1.6764, 'ft'],
    [`5'-6"`, 1.6764, 'ft'],
    ['5 ft 6 in', 1.6764, 'ft'],
    [`5' 6 1/2"`, 1.6891, 'ft'],
    [`3 1/2"`, 0.0889, 'ft'],
    ['30 m', 30, 'm'],
    ['30M', 30, 'm'],
    ['1500 mm', 1.5, 'mm'],
    ['1500 MM', 1.5, 'mm'],
    ['1.5 km', 1500, 'km'],
    ['48 V', 48, 'V'],
    ['48Vdc', 48, 'V'],
    ['48 V DC', 48, 'V'],
    ['0.6 kV', 600, 'kV'],
    ['10 kA', 10_000, 'kA'],
    ['10KA', 10_000, 'kA'],
    ['250 A', 250, 'A'],
    ['-12 C', -12, 'C'],
    ['-12\u00b0C', -12, 'C'],
    ['-12 deg C', -12, 'C'],
    ['14 F', -10, 'F'],
    ['32\u00baF', 0, 'F'],
    ['5 kW', 5000, 'kW'],
    ['-0.27 %/C', -0.27, '%/C'],
    ['-0.27%/\u00b0C', -0.27, '%/C'],
    ['-0.27 % / K', -0.27, '%/C'],
    ['-0.0027/K', -0.27, '%/C'],
    ['-0.0027 1/K', -0.27, '%/C'],
    ['-0.13 V/C', -0.13, 'V/C'],
    ['-134 mV/\u00b0C', -0.134, 'V/C'],
    ['-2.1 mV/cell/C', -2.1, 'mV/cell/C'],
    ['-2.1 mV/K/cell', -2.1, 'mV/cell/C'],
    ['300 rpm', 300, 'rpm'],
    ['4 pcs', 4, 'pieces'],
    ['48', 48, ''],
    ['-12\u00b0', -12, ''],
  ])('%s', (text, value, symbol) => {
    const reading = read(text);
    expect(reading).toHaveLength(2);
    expect(reading[0]).toBeCloseTo(value, 9);
    expect(reading[1]).toBe(symbol);
  });

  test.each([
    ['100 parsec', 'unknown-unit'],
    ['5 MV', 'unknown-unit'],
    ['5 MA', 'unknown-unit'],
    ['100-120 ft', 'unknown-unit'],
    ['90/110 m', 'unknown-unit'],
    ['100 ft or so', 'unknown-unit'],
    ['-0.27 ppm', 'unknown-unit'],
    ['-0.15 %/F', 'unknown-unit'],
    ['about 100 ft', 'no-number'],
    ['<100 ft', 'no-number'],
    [`5' 14"`, 'unknown-unit'],
    [`5' 1/0"`, 'unknown-unit'],
    ['1,234 ft', 'two-ways'],
  ])('%s is not read: %s', (text, problem) => {
    expect(read(text)).toBe(problem);
  });

  it('knows AC from DC', () => {
    expect(unitOf('V dc')?.current).toBe('dc');
    expect(unitOf('(Vac)')?.current).toBe('ac');
    expect(unitOf('kV')?.current).toBeNull();
    expect(unitOf('')).toBeNull();
    expect(unitOf('V'.repeat(1000))).toBeNull();
  });
});

it('gives one length whatever unit it is written in', () => {
  const units: [string, number][] = [
    ['ft', 0.3048],
    ["'", 0.3048],
    ['in', 0.0254],
    ['"', 0.0254],
    ['m', 1],
    ['mm', 0.001],
    ['km', 1000],
  ];
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 10_000_000 }),
      fc.constantFrom(...units),
      fc.constantFrom('', ' '),
      (mm, [unit, size], gap) => {
        const figure = Number((mm / 1000 / size).toPrecision(12));
        fc.pre(!/e/i.test(String(figure)));
        const reading = read(`${figure}${gap}${unit}`);
        expect(typeof reading).not.toBe('string');
        expect(Math.abs(Number(reading[0]) - mm / 1000)).toBeLessThanOrEqual(1e-9 * mm);
      },
    ),
  );
});

describe('a wire size', () => {
  // ASTM B258: d = 0.005 in x 92^((36 - n)/39); diameters as the published table has them.
  test.each([
    ['14 AWG', 1.628],
    ['10 AWG', 2.588],
    ['#6 AWG', 4.115],
    ['No. 6', 4.115],
    ['2/0', 9.266],
    ['2/0 AWG', 9.266],
  ])('%s is %d mm thick', (text, mm) => {
    expect((readWireSize(text)?.diameter ?? 0) * 1000).toBeCloseTo(mm, 3);
  });

  it('gives area and diameter of one another', () => {
    expect(readWireSize('6 mm2')?.area).toBe(6);
    expect(readWireSize('16 mm\u00b2')?.diameter).toBeCloseTo(2 * Math.sqrt(16 / Math.PI) * 1e-3, 12);
    const ten = readWireSize('10 AWG');
    expect((Math.PI / 4) * ((ten?.diameter ?? 0) * 1000) ** 2).toBeCloseTo(ten?.area ?? 0, 9);
  });

  test.each(['10', '', 'AWG', '99 AWG', '5/0 AWG', '0 mm2', '-6 mm2', '6 m', 'thick'])(
    '"%s" is none',
    (text) => {
      expect(readWireSize(text)).toBeNull();
    },
  );
});
