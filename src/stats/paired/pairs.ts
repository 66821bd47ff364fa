/** Two yes-or-no results of each pair, such as one limb read twice, or both limbs of a child. */
export interface Pairs {
  readonly both: number;
  readonly firstOnly: number;
  readonly secondOnly: number;
  readonly neither: number;
}

/** Throws unless the four cells are counts and there is at least one pair. */
export function requirePairs(caller: string, pairs: Pairs): void {
  for (const cell of ["both", "firstOnly", "secondOnly", "neither"] as const)
    if (!(Number.isSafeInteger(pairs[cell]) && pairs[cell] >= 0))
      throw new RangeError(`${caller}: ${cell} must be an integer of at least 0, got ${pairs[cell]}`);
  const total = pairs.both + pairs.firstOnly + pairs.secondOnly + pairs.neither;
  if (!(Number.isSafeInteger(total) && total >= 1))
    throw new RangeError(`${caller}: there must be at least one pair, got ${total}`);
}
