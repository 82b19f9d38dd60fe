import { parentPort } from 'node:worker_threads';
import type { DocumentContext } from '../documents/parts/context.js';
import { renderDocuments } from '../documents/render.js';
import type { ExitStatus } from '../model/exit-status.js';
import { Failure } from '../model/failure.js';
import type { Note } from '../model/open-item.js';
import type { Plan } from '../model/plan.js';
import type { RenderedDocument } from '../model/print.js';
import { embeddedFonts } from '../print/fonts.js';

/** What a rendering thread is sent: a job's plan and what its documents need, but for the fonts, which it knows itself. */
export interface RenderOrder {
  readonly number: number;
  readonly plan: Plan;
  readonly context: Omit<DocumentContext, 'fonts'> & { readonly fonts: undefined };
}

/** What it sends back. */
export interface RenderAnswer {
  readonly number: number;
  readonly documents?: readonly RenderedDocument[];
  readonly failure?: { readonly note: Note; readonly exitStatus: ExitStatus };
  /** Of a fault of the program. */
  readonly fault?: string;
}

async function answer({ number, plan, context }: RenderOrder): Promise<RenderAnswer> {
  try {
    const { kit } = await embeddedFonts();
    return { number, documents: await renderDocuments(plan, { ...context, fonts: kit }) };
  } catch (error) {
    if (error instanceof Failure) {
      return { number, failure: { note: error.note, exitStatus: error.exitStatus } };
    }
    return { number, fault: error instanceof Error ? error.message : String(error) };
  }
}

parentPort?.on('message', (order: RenderOrder) => {
  void answer(order).then((result) => parentPort?.postMessage(result));
});
