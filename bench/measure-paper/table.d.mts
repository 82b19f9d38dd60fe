import type { MeasuredDocument } from './measure-job.d.mts';

/** A line a page, under two of a heading. */
export function tableOf(documents: readonly MeasuredDocument[]): string[];

/** A line a failure, of what isn't held. */
export function failuresOf(documents: readonly MeasuredDocument[]): string[];

/** A line a document and line of the design, of what is held. */
export function heldOf(documents: readonly MeasuredDocument[]): string[];
