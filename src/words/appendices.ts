import { APPENDICES, type Appendix } from '../model/appendices.js';

/**
 * What `--with` takes: the pack holds rejected parts and ports without a protector anyway; no document prints the trace of
 * a decision yet, which `why` tells.
 */
export const PRINTED_APPENDICES: readonly Appendix[] = APPENDICES.filter((appendix) => appendix !== 'trace');

/** An appendix by its name; undefined: there is none of that name that anything prints. */
export function appendixOf(name: string): Appendix | undefined {
  return PRINTED_APPENDICES.find((appendix) => appendix === name);
}
