/** About as many single marks as a picture can hold: more take long to draw and cover each other. */
const most = 1000;

/** Where a picture cannot hold all cases, one in so many is drawn; 1: all are. */
export function oneIn(cases: number): number {
  return Math.max(1, Math.ceil(cases / most));
}

/** One item in so many, the first among them. */
export function someOf<T>(items: readonly T[], one: number): readonly T[] {
  return one === 1 ? items : items.filter((_, i) => i % one === 0);
}

/** Said in the caption when not all cases are drawn. */
export function someWords(one: number): string {
  return one === 1 ? "" : ` There are too many to draw them all: one in ${one} is.`;
}
