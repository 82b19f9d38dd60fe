import { parentPort } from 'node:worker_threads';
import type { DocumentContext } from '../documents/parts/context.js';
import { renderDocuments } from '../documents/render.js';
import type { ExitStatus } from '../model/exit-status.js';
import { Failure } from '../model/failure.js';
import type { Note } from '../model/open-item.js';
import type { Plan } from '../model/plan.js';
import type { MeasuredBlock, RenderedDocument } from '../model/print.js';
import { embeddedFonts } from '../print/fonts.js';

/** What a rendering thread is sent: a job's plan and what its documents need, but for the fonts, which it knows itself, and the browser. */
export interface RenderOrder {
  readonly number: number;
  readonly plan: Plan;
  readonly context: Omit<DocumentContext, 'fonts' | 'measure'> & {
    readonly fonts: undefined;
    readonly measure: undefined;
  };
}

/** What it is sent when it asked for blocks to be measured. */
export interface MeasuredAnswer {
  readonly measured: number;
  readonly blocks?: readonly MeasuredBlock[];
  readonly failure?: SentFailure;
  readonly fault?: string;
}

/** A page whose blocks the thread that holds the browser shall measure. */
export interface MeasureOrder {
  readonly measure: number;
  readonly html: string;
}

/** A failure without its class, which no message carries. */
export interface SentFailure {
  readonly note: Note;
  readonly exitStatus: ExitStatus;
}

/** What it sends back. */
export interface RenderAnswer {
  readonly number: number;
  readonly documents?: readonly RenderedDocument[];
  readonly failure?: SentFailure;
  /** Of a fault of the program. */
  readonly fault?: string;
}

type Waiting = (answer: MeasuredAnswer) => void;
const waiting = new Map<number, Waiting>();
let asked = 0;

/** The browser is another thread's: it is asked, and this one waits. */
async function measure(html: string): Promise<readonly MeasuredBlock[]> {
  asked += 1;
  const order: MeasureOrder = { measure: asked, html };
  const answer = await new Promise<MeasuredAnswer>((resolve) => {
    waiting.set(order.measure, resolve);
    parentPort?.postMessage(order);
  });
  if (answer.blocks) return answer.blocks;
  if (answer.failure) throw new Failure(answer.failure.note, answer.failure.exitStatus);
  throw new Error(answer.fault);
}

async function answer({ number, plan, context }: RenderOrder): Promise<RenderAnswer> {
  try {
    const { kit } = await embeddedFonts();
    return { number, documents: await renderDocuments(plan, { ...context, fonts: kit, measure }) };
  } catch (error) {
    return { number, ...sent(error) };
  }
}

/** What a message carries of an error. */
function sent(error: unknown): { failure: SentFailure } | { fault: string } {
  if (error instanceof Failure) return { failure: { note: error.note, exitStatus: error.exitStatus } };
  return { fault: error instanceof Error ? error.message : String(error) };
}

parentPort?.on('message', (message: RenderOrder | MeasuredAnswer) => {
  if ('measured' in message) {
    waiting.get(message.measured)?.(message);
    waiting.delete(message.measured);
    return;
  }
  void answer(message).then((result) => parentPort?.postMessage(result));
});
