import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { leadVoltage, type LeadInput } from '../../src/electrical/leads.js';
import { currentWaveFigures } from '../../src/electrical/waves.js';
import { parseWireGauge } from '../../src/electrical/wire-gauge.js';
import { defaultSettings } from '../../src/model/settings.js';

interface Simulated {
  /** s, A, V at each point of the transient. */
  readonly time: readonly number[];
  readonly current: readonly number[];
  readonly voltage: readonly number[];
}

/**
 * A circuit simulator's transient of an 8/20 us current source of IEEE C62.41.2-2002 through an inductance. The netlist holds
 * the wave in its published constants, so that it shares nothing with src/ but the inductance.
 */
function simulate(peak: number, henries: number): Simulated {
  const folder = mkdtempSync(join(tmpdir(), 'lead-voltage-'));
  try {
    const out = join(folder, 'out.txt');
    const wave = `0.01243 * ${peak} * (time*1e6)^3 * exp(-(time*1e6)/3.911)`;
    const netlist = [
      '8/20 us current through the leads of a protector',
      `B1 0 lead I=${wave}`,
      'Vmeter lead end 0',
      `L1 end 0 ${henries.toExponential(15)}`,
      '.tran 5n 60u 0 5n uic',
      '.control',
      'set wr_singlescale',
      'set numdgt=12',
      'run',
      `wrdata ${out} v(lead) i(Vmeter)`,
      'quit',
      '.endc',
      '.end',
      '',
    ].join('\n');
    const file = join(folder, 'lead.cir');
    writeFileSync(file, netlist);
    execFileSync('ngspice', ['-b', file], { stdio: 'pipe' });
    const rows = readFileSync(out, 'utf8')
      .trim()
      .split('\n')
      .map((line) => line.trim().split(/\s+/).map(Number));
    return {
      time: rows.map((r) => r[0] ?? NaN),
      voltage: rows.map((r) => r[1] ?? NaN),
      current: rows.map((r) => r[2] ?? NaN),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const { leadPeakNec, leadPeakIec } = defaultSettings().thresholds;

function gauge(text: string): number {
  const found = parseWireGauge(text);
  if (!found) throw new Error(text);
  return found.diameter;
}

describe.each([
  { length: 0.5, diameter: gauge('10 AWG'), peak: leadPeakNec, upBasis: 'Up' },
  { length: 1, diameter: gauge('10 AWG'), peak: leadPeakNec, upBasis: 'VPR' },
  { length: 0.5, diameter: gauge('6 AWG'), peak: leadPeakIec, upBasis: 'Up' },
  { length: 2.5, diameter: gauge('16 mm2'), peak: leadPeakIec, upBasis: 'Up' },
] satisfies readonly LeadInput[])('$length m, $peak A, $upBasis', (input) => {
  const ours = leadVoltage(input);
  const theirs = simulate(input.peak, ours.inductanceAdded);

  test('the steepest voltage of the transient agrees within 1 %', () => {
    const highest = Math.max(...theirs.voltage);
    expect(highest).toBeGreaterThan(0);
    expect(Math.abs(ours.value / highest - 1)).toBeLessThan(0.01);
  });

  test('the simulated current is the wave: its peak and its time within 1 %', () => {
    const figures = currentWaveFigures(input.peak);
    const highest = Math.max(...theirs.current);
    expect(Math.abs(figures.peak / highest - 1)).toBeLessThan(0.01);
    const at = theirs.time[theirs.current.indexOf(highest)] ?? NaN;
    expect(Math.abs(figures.peakTime / at - 1)).toBeLessThan(0.01);
  });
});
