/** Tells how far the reading of a sheet is. Steps in columns say how many of them are done. */
export interface ReadingSteps {
  readonly found: () => void;
  readonly lookedAt: (columns: number, of: number) => void;
  readonly read: (columns: number, of: number) => void;
  readonly done: () => void;
}

/** Shares of the work that are done when the table is found, its columns looked at, and its cells read. */
const shares = { found: 0.25, lookedAt: 0.5, read: 0.8 };

/** @param tell called with the share of the work that is done, rising to 1 */
export function readingSteps(tell: (share: number) => void = () => {}): ReadingSteps {
  const between = (from: number, to: number) => (columns: number, of: number) =>
    tell(from + ((to - from) * columns) / of);
  return {
    found: () => tell(shares.found),
    lookedAt: between(shares.found, shares.lookedAt),
    read: between(shares.lookedAt, shares.read),
    done: () => tell(1),
  };
}
