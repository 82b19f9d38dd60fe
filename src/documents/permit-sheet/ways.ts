/** A way to lay out. */
export interface Way {
  /** True: the last of the wide blocks goes into columns. */
  readonly narrowLast: boolean;
  readonly columns: number;
  /** How high the column beside the first drawing may be; mm. */
  readonly besideHeight: number;
  /** True: a table over the whole width goes on over sheets before columns fill up the rest. */
  readonly tears: boolean;
  /** Where columns of running text begin: before the tables, behind the first of them, behind all. */
  readonly text: (typeof TEXTS)[number];
  /** Share of a panel's height that text and tables may fill, so that the last sheets share what is left. */
  readonly fill: number;
  /** The order in which so many blocks stand in columns. */
  readonly order: Order;
}

/** The order in which so many blocks stand. */
export type Order = (count: number) => readonly number[];

/** As they come, which is read best. */
export const upTo: Order = (count) => Array.from({ length: count }, (_, index) => index);
const moved =
  (from: number, to: number): Order =>
  (count) => {
    const order = [...upTo(count)];
    return from < count ? order.toSpliced(from, 1).toSpliced(to, 0, from) : order;
  };
/** Orders other than the one that is read best, which save a sheet now and then. */
export const OTHER_ORDERS: readonly Order[] = [
  moved(1, 0),
  moved(2, 1),
  moved(2, 0),
  moved(3, 0),
  moved(3, 1),
  moved(3, 2),
];

const BOTH = [false, true] as const;
const TEXTS = ['last', 'first', 'between'] as const;

/**
 * All ways to lay out in one order.
 * @param columns numbers of columns that running text may have
 * @param besides heights that the column beside the first drawing may have, mm
 * @param fill share of a panel's height that may be filled
 */
export function waysOf(
  columns: readonly number[],
  besides: readonly number[],
  order: Order,
  fill = 1,
): Way[] {
  return columns.flatMap((count) =>
    besides.flatMap((besideHeight) =>
      BOTH.flatMap((tears) =>
        TEXTS.flatMap((text) =>
          BOTH.map((narrowLast): Way => ({
            columns: count,
            besideHeight,
            tears,
            text,
            narrowLast,
            fill,
            order,
          })),
        ),
      ),
    ),
  );
}
