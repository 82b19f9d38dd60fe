import type { Page, Text } from './page.d.mts';

/** The title strip of a page; its box in points. */
export interface Strip {
  readonly texts: ReadonlySet<Text>;
  readonly box: {
    readonly left: number;
    readonly top: number;
    readonly right: number;
    readonly bottom: number;
  };
  readonly isAlongFoot: boolean;
}

/** The title strip of a page; null where it has none. */
export function titleStrip(page: Page): Strip | null;
