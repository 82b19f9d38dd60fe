/** What a run takes at most; what is beyond is told before work starts on it, in one sentence. Common practice, no source. */
export const LIMITS = {
  /** Rows of a file. */
  fileRows: 100_000,
  /** Rows of a job, a quantity counted as so many. */
  jobRows: 5_000,
  /** Housings of a job. */
  jobHousings: 500,
  /** Connections that the runs of a job follow: a transfer switch joins each that feeds it to each that it feeds. */
  jobConnections: 50_000,
  /** Bytes of all photos of a job: a browser prints so much in one document, and no mail takes more. */
  jobPhotos: 150_000_000,
  /** Jobs of a run. */
  jobs: 10_000,
  /** Characters of a cell. */
  cell: 1_000_000,
} as const;
