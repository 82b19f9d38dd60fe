/** A batch's way to be stopped. */
export interface Stopping {
  readonly signal: AbortSignal;
  /** Takes the handlers away. */
  readonly dispose: () => void;
}

const SIGNALS = ['SIGINT', 'SIGTERM'] as const;

/**
 * Makes the signal that stops a batch.
 * @param given the caller's own signal; undefined: none
 * @param onSignals true: Ctrl-C and SIGTERM stop it too. The second one is the system's own to carry out, which ends the
 *   process whatever it waits for, and the browser with it: `process.exit` would wait for a file that never opens
 */
export function stopping(given: AbortSignal | undefined, onSignals: boolean): Stopping {
  const controller = new AbortController();
  const dispose = (): void => {
    for (const name of SIGNALS) process.off(name, stop);
  };
  const stop = (): void => {
    dispose();
    controller.abort();
  };
  if (onSignals) for (const name of SIGNALS) process.on(name, stop);
  return { signal: given ? AbortSignal.any([controller.signal, given]) : controller.signal, dispose };
}
