import type { Picture } from './ink.d.mts';

/** Dots an inch of the pictures. */
export const DOTS_AN_INCH: number;

/** The pages of a PDF as pictures. Throws where poppler isn't there or can't read the file. */
export function picturesOf(file: string): Picture[];
