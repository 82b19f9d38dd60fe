/** The exit statuses of the contract; a run ends with the highest that applies. */
export const EXIT = {
  /** Every job is written and none is a draft. */
  complete: 0,
  /** All jobs are written, some are drafts. */
  drafts: 1,
  /** Some job, list, library or catalogue file couldn't be read at all. */
  unreadable: 2,
  /** The command line is wrong. */
  usage: 64,
  /** The browser, a template or the disk failed. */
  failed: 70,
  /** Another run holds the output folder. */
  held: 75,
  /** Stopped by Ctrl-C or SIGTERM. */
  interrupted: 130,
} as const;

export type ExitStatus = (typeof EXIT)[keyof typeof EXIT];
