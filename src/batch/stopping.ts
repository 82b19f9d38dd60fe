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
 * @param onSignals true: Ctrl-C and SIGTERM stop it too; a second one ends the process at once (130), the browser with it
 */
export function stopping(given: AbortSignal | undefined, onSignals: boolean): Stopping {
  const controller = new AbortController();
  const stop = (): void => {
    if (controller.signal.aborted) process.exit(130);
    controller.abort();
  };
  if (onSignals) for (const name of SIGNALS) process.on(name, stop);
  return {
    signal: given ? AbortSignal.any([controller.signal, given]) : controller.signal,
    dispose: () => {
      for (const name of SIGNALS) process.off(name, stop);
    },
  };
}
