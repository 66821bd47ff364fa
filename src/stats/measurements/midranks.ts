/** Ranks of values, equal values sharing the mean of the ranks they span. */
export interface Midranks {
  /** Aligned with the values; halves where an even number are tied. */
  readonly ranks: readonly number[];
  /** Size of each group of two or more equal values. */
  readonly ties: readonly number[];
}

/**
 * Midranks of values, smallest first.
 *
 * @param values finite numbers; only values equal to the last bit are tied, so clean differences of decimals first
 *   (`pairedDifferences`)
 * @see Kruskal and Wallis 1952, J Am Stat Assoc 47:583-621, on ties
 * @example midranks([3, 1, 3, 8]).ranks // => [2.5, 1, 2.5, 4]
 */
export function midranks(values: readonly number[]): Midranks {
  const order = values.map((_, index) => index).sort((a, b) => values[a]! - values[b]!);
  const ranks = new Array<number>(values.length);
  const ties: number[] = [];
  for (let from = 0; from < order.length;) {
    let to = from + 1;
    while (to < order.length && values[order[to]!] === values[order[from]!]) to++;
    for (let at = from; at < to; at++) ranks[order[at]!] = (from + 1 + to) / 2;
    if (to - from > 1) ties.push(to - from);
    from = to;
  }
  return { ranks, ties };
}
