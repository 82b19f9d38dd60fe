import { z } from 'zod';
import { FIELD_GUIDE } from '../model/field-guide.js';
import type { AskedModel } from '../model/list.js';

/** Models that the library lacks, as the report shows them. */
export const reportModelsSchema = z.array(
  z.object({
    model: z.string(),
    jobs: z.string(),
    /** The facts that it was asked for, in plain words; none: it was held against no library. */
    facts: z.array(z.string()),
    /** A model of the library that may be meant; `` for none. */
    near: z.string(),
  }),
);

/** Each model that the library lacks with the facts that are asked of it, and the model that may be meant. */
export function reportModels(models: readonly AskedModel[]): z.infer<typeof reportModelsSchema> {
  return models.map(({ maker, model, jobs, facts, near = '' }) => ({
    model: `${maker} ${model}`,
    jobs: jobs.join(', '),
    facts: facts.map((field) => `${field}: ${FIELD_GUIDE[field].means}`),
    near,
  }));
}
