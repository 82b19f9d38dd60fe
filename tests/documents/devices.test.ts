import { describe, expect, it } from 'vitest';
import { housingDrawing } from '../../src/documents/drawing/housing.js';
import { scheduleRow } from '../../src/documents/parts/schedule.js';
import type { Plan, PlannedProtector } from '../../src/model/plan.js';
import { catalogueOf, dataOf, partLine, type PlanOptions } from '../plan/plan-of.js';

// Which conductor an overcurrent device stands in, as papers tell and draw it; rules.md 2.10, NEC 240.22. Own cases.

function there({ protectors }: Plan, tag: string): PlannedProtector {
  const found = protectors.find(({ ports: [port] }) => port?.equipment === tag);
  if (!found) throw new Error(`nothing at ${tag}`);
  return found;
}

const devices = (plan: Plan, tag: string): string =>
  scheduleRow(there(plan, tag), plan.basis).devices.join(' | ');

/** Dashed frames of devices as rows of channels from top to bottom: `1 2`, with `|` between two frames. */
function framed(plan: Plan, tag: string): string {
  const svg = housingDrawing(there(plan, tag), plan.basis, 'green');
  const rows = [...svg.matchAll(/<text[^>]* y="([\d.]+)"[^>]*>Channel (\d)/g)].map(([, y, channel]) => ({
    y: Number(y),
    channel,
  }));
  const frames = [...svg.matchAll(/<rect[^>]*stroke-dasharray[^>]*>/g)].map(([rect]) => {
    const of = (name: string): number => Number(new RegExp(` ${name}="([\\d.]+)"`).exec(rect)?.[1]);
    return { top: of('y'), bottom: of('y') + of('height') };
  });
  expect(rows.length).toBeGreaterThan(0);
  return frames
    .map(({ top, bottom }) =>
      rows
        .filter(({ y }) => top < y && y < bottom)
        .map(({ channel }) => channel)
        .join(' '),
    )
    .join(' | ');
}

const battery = (more: string): Plan =>
  dataOf(
    '',
    `B battery; battery_voltage=48; battery_chemistry=lfp; fault_current=5 kA; place=H / b; connects_to=C; run_length=60 ft; ${more}
     C charge-controller; place=H / c`,
  );
const threes: PlanOptions = {
  catalogue: catalogueOf(partLine('OAK', 'channels=3; mcov_ac=640; up=600; listed_for=ungrounded')),
};
const service = (ac: string, options?: PlanOptions): Plan => dataOf('', `S service; ac_in=${ac}`, options);

describe('the device', () => {
  it('of a battery stands in the pole that isn’t grounded', () => {
    const negative = battery('dc_grounding=negative');
    expect(devices(negative, 'B')).toMatch(/^breaker or fuses, 1 pole, in positive; none in negative, /);
    expect(framed(negative, 'B')).toBe('1');
    const positive = battery('dc_grounding=positive');
    expect(devices(positive, 'B')).toMatch(/1 pole, in negative, -48\s?V; none in positive, return \(\+\), /);
    expect(framed(positive, 'B')).toBe('2');
  });

  it('of a floating battery stands in both, and names none', () => {
    const floats = battery('dc_grounding=floating');
    expect(devices(floats, 'B')).toMatch(/^breaker or fuses, 2 poles, at most 30 A/);
    expect(framed(floats, 'B')).toBe('1 2');
  });

  it('of a corner-grounded service goes past L2', () => {
    const corner = service('480 delta; system_grounding=corner', threes);
    expect(devices(corner, 'S')).toMatch(/2 poles, in L1 and L3; none in L2, /);
    expect(framed(corner, 'S')).toBe('1 | 3');
  });

  it('of one line and N stands in the line', () => {
    const options = { catalogue: catalogueOf(partLine('OAK', 'channels=2; mcov_ac=150; up=600')) };
    const one = dataOf('', 'I inverter-charger; ac_in=; ac_out=120; n_pe_link=no; protect=yes', options);
    expect(there(one, 'I').channels.map(({ wire }) => wire.name)).toEqual(['L1', 'N']);
    expect(devices(one, 'I')).toMatch(/1 pole, in L1, /);
    expect(framed(one, 'I')).toBe('1');
  });

  it('of two lines names none', () => {
    const two = service('120/240');
    expect(devices(two, 'S')).toMatch(/^breaker or fuses, 2 poles, at most 30 A/);
    expect(framed(two, 'S')).toBe('1 2');
  });
});
