import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { Failure } from '../model/failure.js';
import type { RenderedDocument } from '../model/print.js';
import type { BatchSteps } from './batch-context.js';
import type { Measure } from '../model/print.js';
import type { MeasuredAnswer, MeasureOrder, RenderAnswer, RenderOrder } from './render-thread.js';

type Render = BatchSteps['renderDocuments'];

/** Renders the documents of many jobs. */
export interface Renderers {
  readonly render: Render;
  /** Ends the threads; never fails. */
  readonly close: () => Promise<void>;
}

/** Jobs rendered in this thread before others are started: a run that makes a few packs again needs none. */
const ALONE = 3;
/** A job's documents take the browser six times as long as their rendering takes a thread. */
const PAGES_A_THREAD = 6;

const THREAD = fileURLToPath(new URL('./render-thread.js', import.meta.url));

/**
 * Renders the documents of many jobs, beside the thread that feeds the browser, so that no page waits for a layout.
 * @param render how a job's documents are rendered in this thread
 * @param pages documents printed at a time
 */
export function openRenderers(render: Render, pages: number): Renderers {
  let threads: RenderThread[] = [];
  let begun = 0;
  return {
    render: (plan, context) => {
      begun += 1;
      // Run from its sources, as in a test, the program has no file that a thread could be started from.
      if (begun <= ALONE || !existsSync(THREAD)) return render(plan, context);
      threads = threads.filter((thread) => !thread.hasEnded);
      const most = Math.ceil(pages / PAGES_A_THREAD);
      if (threads.length < most) threads.push(new RenderThread());
      const idlest = threads.reduce((a, b) => (b.waiting < a.waiting ? b : a));
      // Functions go into no message.
      return idlest.render(plan, { ...context, fonts: undefined, measure: undefined }, context.measure);
    },
    close: async () => {
      await Promise.all(threads.map((thread) => thread.close()));
    },
  };
}

/** One thread that renders, one job after another. */
class RenderThread {
  private readonly worker = new Worker(THREAD);
  private readonly orders = new Map<
    number,
    {
      resolve: (d: readonly RenderedDocument[]) => void;
      reject: (e: Error) => void;
    }
  >();
  private sent = 0;
  private measure: Measure | undefined;
  private ended: Error | undefined;

  constructor() {
    this.worker.on('message', (answer: RenderAnswer | MeasureOrder) => {
      if ('measure' in answer) void this.measured(answer);
      else this.take(answer);
    });
    this.worker.once('error', (error) => {
      this.end(error instanceof Error ? error : new Error(String(error)));
    });
    this.worker.once('exit', () => {
      this.end(new Error('the thread that renders documents ended'));
    });
  }

  get hasEnded(): boolean {
    return this.ended !== undefined;
  }

  get waiting(): number {
    return this.orders.size;
  }

  /** Every job of a run has the one browser that measures. */
  render(
    plan: RenderOrder['plan'],
    context: RenderOrder['context'],
    measure: Measure,
  ): Promise<readonly RenderedDocument[]> {
    this.measure = measure;
    return new Promise((resolve, reject) => {
      if (this.ended) {
        reject(this.ended);
        return;
      }
      this.sent += 1;
      this.orders.set(this.sent, { resolve, reject });
      this.worker.postMessage({ number: this.sent, plan, context } satisfies RenderOrder);
    });
  }

  async close(): Promise<void> {
    await this.worker.terminate();
  }

  private async measured({ measure: number, html }: MeasureOrder): Promise<void> {
    let answer: MeasuredAnswer;
    try {
      answer = { measured: number, blocks: this.measure ? await this.measure(html) : [] };
    } catch (error) {
      answer =
        error instanceof Failure
          ? { measured: number, failure: { note: error.note, exitStatus: error.exitStatus } }
          : { measured: number, fault: error instanceof Error ? error.message : String(error) };
    }
    if (!this.hasEnded) this.worker.postMessage(answer);
  }

  private take(answer: RenderAnswer): void {
    const order = this.orders.get(answer.number);
    this.orders.delete(answer.number);
    if (answer.documents) order?.resolve(answer.documents);
    else if (answer.failure) order?.reject(new Failure(answer.failure.note, answer.failure.exitStatus));
    else order?.reject(new Error(answer.fault));
  }

  private end(error: Error): void {
    this.ended ??= error;
    for (const { reject } of this.orders.values()) reject(this.ended);
    this.orders.clear();
  }
}
