import { isNec } from '../../model/editions.js';
import type { Plan } from '../../model/plan.js';
import type { PermitPaper, Settings } from '../../model/settings.js';

/** A permit sheet of one size in landscape; mm. */
export interface PermitPage {
  readonly name: PermitPaper;
  readonly width: number;
  readonly height: number;
  /** From the edge of the paper to the frame; left there is room for holes. */
  readonly left: number;
  readonly edge: number;
  /** Where the title strip stands, and how much it takes inside the frame. */
  readonly strip: 'right' | 'bottom';
  readonly stripSize: number;
  /** Between frame or strip and what stands on the sheet. */
  readonly padding: number;
  /** Panels beside each other, each laid out as a sheet of its own. */
  readonly panels: number;
  /** Columns of running text in a panel. */
  readonly columns: readonly number[];
  /** False: a row of the schedule takes two lines. */
  readonly wide: boolean;
}

const LARGE = { left: 20, edge: 10, strip: 'right', stripSize: 60, padding: 3.5, wide: true } as const;
const SMALL = { left: 20, edge: 7, strip: 'bottom', stripSize: 38, padding: 1.8, wide: false } as const;

/** Sheets: ANSI/ASME Y14.1 A and B, ARCH D; ISO 216 A4 and A3. */
const PAGES: { readonly [P in PermitPaper]: PermitPage } = {
  tabloid: { name: 'tabloid', width: 431.8, height: 279.4, ...LARGE, panels: 1, columns: [2, 3] },
  a3: { name: 'a3', width: 420, height: 297, ...LARGE, panels: 1, columns: [2, 3] },
  letter: { name: 'letter', width: 279.4, height: 215.9, ...SMALL, panels: 1, columns: [2] },
  a4: { name: 'a4', width: 297, height: 210, ...SMALL, panels: 1, columns: [2] },
  'arch-d': { name: 'arch-d', width: 914.4, height: 609.6, ...LARGE, panels: 2, columns: [2, 3] },
};

/** The paper of a job's permit sheets: that of the settings, else by basis. */
export function permitPage(plan: Pick<Plan, 'basis'>, settings: Settings): PermitPage {
  const { permitPaper } = settings;
  const byBasis = isNec(plan.basis) ? 'tabloid' : 'a3';
  return PAGES[permitPaper === 'by-basis' ? byBasis : permitPaper];
}

/** Between two panels, two columns and two bands of a sheet; mm. */
export const GAP = { panel: 8, column: 6, band: 3 } as const;

/** Stroke of the frame, as `permit-frame.css` draws it; mm. */
const FRAME = 0.7;

/** What a panel leaves for drawing and tables; mm. */
export function roomOf(page: PermitPage): { readonly width: number; readonly height: number } {
  const { left, edge, strip, stripSize, padding, panels } = page;
  const width = page.width - left - edge - 2 * (padding + FRAME) - (strip === 'right' ? stripSize : 0);
  const height = page.height - 2 * edge - 2 * (padding + FRAME) - (strip === 'bottom' ? stripSize : 0);
  return { width: (width - (panels - 1) * GAP.panel) / panels, height };
}
