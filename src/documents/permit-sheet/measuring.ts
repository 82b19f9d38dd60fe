import type { MeasuredBlock } from '../../model/print.js';
import type { Prepared } from '../parts/shell.js';
import type { Block } from './blocks.js';

/** Blocks at one width, for the browser to measure. */
interface Setting {
  readonly width: number;
  readonly blocks: readonly Block[];
}

/** The measured blocks of each setting, in their order. */
export type Measuring = (settings: readonly Setting[]) => Promise<readonly (readonly MeasuredBlock[])[]>;

/** Measures blocks in the browser; what was measured at a width before isn't set again. */
export function measuring({ templates, context }: Prepared, style: string): Measuring {
  const known = new Map<Block, { readonly html: string; readonly at: Map<number, MeasuredBlock> }>();
  const entryOf = (block: Block): { readonly html: string; readonly at: Map<number, MeasuredBlock> } => {
    const html = (): string => templates.render(block.template, block.view);
    const entry = known.get(block) ?? { html: html(), at: new Map<number, MeasuredBlock>() };
    known.set(block, entry);
    return entry;
  };
  return async (settings) => {
    const asked = settings.flatMap(({ width, blocks }) =>
      blocks.map((block) => ({ block, width })).filter(({ block }) => !entryOf(block).at.has(width)),
    );
    const blocks = asked.map(({ block: { name }, block, width }) => ({
      name,
      id: name,
      width,
      html: entryOf(block).html,
    }));
    const page = templates.render('permit-sheet/measure', { language: 'en', title: 'Blocks', style, blocks });
    const found = blocks.length === 0 ? [] : await context.measure(page);
    if (found.length !== asked.length)
      throw new Error(`${found.length} of ${asked.length} blocks were measured`);
    asked.forEach(({ block, width }, index) => {
      const one = found[index];
      if (one) entryOf(block).at.set(width, one);
    });
    return settings.map(({ width, blocks: own }) =>
      own.flatMap((block) => entryOf(block).at.get(width) ?? []),
    );
  };
}
