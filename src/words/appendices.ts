import { APPENDICES, type Appendix } from '../model/appendices.js';

/** What `--with` takes, as messages name it. */
export const APPENDIX_NAMES: readonly string[] = APPENDICES;

/** An appendix by its name; undefined: there is none of that name. */
export function appendixOf(name: string): Appendix | undefined {
  return APPENDICES.find((appendix) => appendix === name);
}
