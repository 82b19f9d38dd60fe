import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../src/model/plan.js';
import type { DocumentContext } from '../../../src/documents/parts/context.js';
import { SettingsSchema } from '../../../src/model/settings.js';
import { assumptionRows } from '../../../src/documents/parts/contents/assumptions.js';
import { calculationSummary } from '../../../src/documents/parts/contents/calculations.js';
import { codeTable } from '../../../src/documents/permit-sheet/contents/codes.js';
import { permitNotes } from '../../../src/documents/permit-sheet/contents/notes.js';
import type { Runs } from '../../../src/documents/parts/contents/runs.js';
import { permitSchedule } from '../../../src/documents/parts/contents/schedule.js';
import { titleStrip } from '../../../src/documents/permit-sheet/title-strip.js';
import { blanksOf } from '../../../src/documents/parts/blanks.js';
import { setByHand } from '../fixtures/set-by-hand.js';
import { demoPlan } from '../fixtures/demo-plans.js';
import { planOfSize } from '../../plan-of-size.js';

const context: DocumentContext = {
  settings: SettingsSchema.parse({}),
  date: '2025-03-14',
  fonts: { css: () => '', covers: () => true },
  measure: setByHand,
};
const WIDE = { narrow: false, dataSheets: undefined };
const said = (runs: Runs): string => runs.map(({ text }) => text).join('');

const scheduled = (plan: Plan): string[] =>
  permitSchedule(plan, WIDE).rows.map(({ cells }) => cells.flatMap(({ lines }) => lines.map(said)).join(' '));
const coded = (plan: Plan): string[] =>
  codeTable(plan).rows.map(({ clause, entries }) => `${said(clause)} | ${entries.map(said).join('; ')}`);
const assumed = (plan: Plan): string[] => assumptionRows(plan).rows.map(({ text }) => said(text));
const noted = (plan: Plan): string =>
  permitNotes(plan, WIDE)
    .rows.map(({ text }) => said(text))
    .join('\n');

describe('what a plan reviewer would mark up', () => {
  it('one thing under two names: a turbine’s terminals are no DC input, in the schedule as in the drawing', () => {
    for (const job of ['UF-105', 'UF-111', 'UF-112', 'UF-113', 'UF-114']) {
      const turbine = scheduled(demoPlan(job)).filter((row) => row.includes('turbine input 1'));
      expect(turbine.length, job).toBeGreaterThan(0);
    }
    expect(scheduled(demoPlan('UF-105')).join('\n')).not.toContain('DC input');
    expect(scheduled(demoPlan('UF-112')).join('\n')).toContain('INV, DC input 1');
  });

  it('one fact for each of its places: what converters send back is one assumption, and one entry of a clause', () => {
    const plan = demoPlan('UF-101');
    expect(assumed(plan).filter((text) => text.includes('send back'))).toEqual([
      'Current that converters send back into their DC inputs not known, not counted (CC-1 to CC-5, P-1, P-3 to P-7). Verify.',
    ]);
    const [rating] = coded(plan).filter((row) => row.startsWith('242.8 '));
    expect(rating).toContain(
      'P-1, P-3 to P-7: 10 kA ≥ 27.3 A and what the converter sends back; confirm, see A',
    );
  });

  it('places that nobody can count: an assumption names all of them', async () => {
    const plan = await planOfSize(32);
    expect(assumed(plan)).toContain('DC circuits ungrounded, no pole bonded (ARR-1 to ARR-26). Verify.');
    expect(assumed(plan).join()).not.toMatch(/and \d+ more/);
  });

  it('two figures for one: the lead voltage that is added to the level is the one that the level is told with', () => {
    const leads = calculationSummary(demoPlan('UF-114')).rows.find(
      (r) => r.quantity === 'Voltage of the leads',
    );
    expect(said(leads?.lines[0]?.against ?? [])).toBe(
      'rounded up to 10 V, 416 V in the level below; lead 0.5 m',
    );
    const [level] = coded(demoPlan('UF-114')).filter((row) => row.startsWith('534.4.4.2'));
    expect(level).toContain('leads 416 V');
    expect(level).not.toContain('420 V');
  });

  it('a reason of another place: a clause that doesn’t ask says why where it would ask', () => {
    const [none] = codeTable(demoPlan('UF-107')).lines.map(said);
    expect(none).toBe(
      'Does not apply: 215.18 (stands at the service); 225.42 (no dwelling unit or sleeping rooms there); 694.7(D) (no wind turbine).',
    );
  });

  it('a clause left out: 225.42 at the workshop of a house whose own panel 215.18 asks for', async () => {
    const plan = await planOfSize(6);
    expect(codeTable(plan).lines.map(said)[0]).toBe(
      'Does not apply: 225.42 (no dwelling unit or sleeping rooms there); 694.7(D) (no wind turbine).',
    );
  });

  it('a bare panel far from the service, without a reason: indoors the length of a run asks for nothing', () => {
    expect(noted(demoPlan('UF-106'))).toContain(
      'No protector asked for at: output of ARR-2, ARR-3 (no run outdoors or between buildings over 100 ft); feeder of DP, FORGE (its runs stay indoors in one building; beyond the reach of P-8, 100 ft).',
    );
  });

  it('a bare panel in another building, or one of which nobody says why', () => {
    expect(noted(demoPlan('UF-112'))).toContain(
      'feeder of COT (no run outdoors or between buildings over 100 ft; fed from another building, where the reach of P-3 ends); feeder of MP (no run outdoors or between buildings over 100 ft; within reach of P-3).',
    );
    expect(noted(demoPlan('UF-107'))).toContain('feeder of MP (stands at the service; ');
    for (const job of ['UF-105', 'UF-107', 'UF-108', 'UF-115'])
      expect(noted(demoPlan(job)), job).not.toMatch(/(?:of|,) [A-Z-]+[;.]/);
  });

  it('an exception where the rule itself is kept: leads of 10 AWG behind 20 A', () => {
    // 240.4(D): 12 AWG copper may stand behind 20 A, so 10 AWG may.
    const [row] = coded(demoPlan('UF-112')).filter((one) => one.startsWith('240.'));
    expect(row).toBe('240.4(D) | P-2 to P-8: device of at most 20 A, leads 10 AWG');
  });

  it('a least lead that a device of 20 A doesn’t allow, without whose figure it is', () => {
    const [row] = coded(demoPlan('UF-112')).filter((one) => one.startsWith('242.24'));
    expect(row).toContain('P-2, P-4, P-5, P-6: 10 AWG (least 14 AWG Cu by instructions)');
    expect(row).toContain('P-1, P-3, P-7, P-8: 10 AWG (least 12 AWG Cu)');
  });

  it('a column for listings where no part has one', () => {
    const heads = (job: string): string[] =>
      permitSchedule(demoPlan(job), WIDE).heads.map((head) => head.text);
    expect(heads('UF-114')).toContain('Part, maker');
    expect(heads('UF-102')).toContain('Part, maker, file');
    expect(heads('UF-110')).toContain('Part, maker, listing');
  });

  it('a word that means nothing to him: where no part is chosen, a clause says that', () => {
    const rows = coded(demoPlan('UF-110')).join('\n');
    expect(rows).toContain('P-2, P-4: L1, L2, L3; no part chosen');
    expect(rows).not.toContain('OPEN');
  });

  it('a temperature in two scales, one of them unnamed', () => {
    expect(noted(demoPlan('UF-107'))).toContain('Lowest ambient temperature -20 °C (Umberfold');
    expect(noted(demoPlan('UF-103'))).toContain('Lowest ambient temperature -18.33 °C (Umberfold');
  });

  it('a code that is stated flatly though nobody stated it', () => {
    const strip = (job: string): string => {
      const plan = demoPlan(job);
      return titleStrip(plan, context, blanksOf(plan)).basis;
    };
    expect(strip('UF-108')).toBe('NEC (NFPA 70), 2023 edition, assumed');
    expect(strip('UF-102')).toBe('NEC (NFPA 70), 2023 edition');
  });

  it('words of another country: under IEC what is grounded is earthed', () => {
    const text = noted(demoPlan('UF-114'));
    expect(text).toContain('line lead plus earth lead');
    expect(text).toContain('Earth leads land');
    expect(text).not.toMatch(/ground/i);
    expect(
      permitSchedule(demoPlan('UF-114'), WIDE)
        .heads.map(({ text: head }) => head)
        .join(),
    ).toContain('earth to');
    expect(noted(demoPlan('UF-102'))).toContain('Ground leads land');
  });

  it('words of the NEC on a sheet by the IEC', () => {
    const plan = demoPlan('UF-114');
    const all = JSON.stringify([
      permitSchedule(plan, WIDE),
      codeTable(plan),
      calculationSummary(plan),
      assumptionRows(plan),
      permitNotes(plan, WIDE),
    ]);
    expect(all).not.toMatch(/\bSCCR\b|solidly|\bground\b|NEMA|\b4X\b|floating/i);
    expect(all).toContain('ISCCR');
    expect(scheduled(plan).join()).toContain('400/230 V, TT');
  });

  it('a 3+1 part without the rating of its path from N to PE, and a TT system without a word on residual current devices', () => {
    // IEC 60364-5-53 Table 534.4, value from memory: In of 20 kA with three phases, 10 kA with one.
    const [row] = coded(demoPlan('UF-114')).filter((one) => one.startsWith('Table 534.4'));
    expect(row).toBe('Table 534.4 | P-2, P-4, P-5: In 20 kA ≥ 20 kA; P-7: In 10 kA ≥ 10 kA');
    expect(noted(demoPlan('UF-114'))).toContain('Residual current devices of the TT system: by others');
    expect(noted(demoPlan('UF-112'))).not.toContain('Residual');
  });

  it('a factor of surroundings that decides, untold', () => {
    const risk = calculationSummary(demoPlan('UF-114')).rows.find(
      (r) => r.quantity === 'Calculated risk level',
    );
    expect(said(risk?.lines[0]?.working ?? [])).toContain('850: surroundings urban, stated');
  });

  it('amperes in thousands beside kiloamperes', () => {
    const [row] = calculationSummary(demoPlan('UF-103')).rows.filter((r) => r.quantity === 'Fault current');
    expect(row?.lines.map(({ working }) => said(working))).toContain('SVC 10 kA; GEN only in place of that');
  });
});
