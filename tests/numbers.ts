/** Whole numbers from `low` to `high`, the same on every run for a seed (mulberry32, public domain). */
export function numbers(seed: number): (low: number, high: number) => number {
  let state = seed;
  return (low, high) => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return low + Math.floor((((t ^ (t >>> 14)) >>> 0) / 2 ** 32) * (high - low + 1));
  };
}
