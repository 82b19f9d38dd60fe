import type { Page } from './page.d.mts';

/** How far from the left edge the nearest text stands, in mm; null where the page has no text. */
export function nearestToLeft(page: Page): { readonly millimetres: number; readonly text: string } | null;

/** Texts that lie beyond an edge of their sheet. */
export function beyondSheet(page: Page): string[];

/** What the browser has shrunk a page to: a share such as 0.8; null where it is as the styles say. */
export function shrunkTo(page: Page): number | null;
