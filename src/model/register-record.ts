import type { z } from 'zod';
import { RecordSchema } from './record.js';

/** What the register asks of a record: its plans of what there is now are many times larger, and say nothing to it. */
export const RegisterRecordSchema = RecordSchema.pick({
  version: true,
  job: true,
  jobName: true,
  address: true,
  state: true,
  housings: true,
  readings: true,
  due: true,
});
export type RegisterRecord = z.infer<typeof RegisterRecordSchema>;
