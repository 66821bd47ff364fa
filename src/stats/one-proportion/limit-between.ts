import { bracketedRoot } from "../../numeric/bracketed-root.js";

/**
 * The root between two points in either order, of a function that is negative at `from` and positive at `to`; an end whose
 * sign is lost to rounding is the root.
 */
export function limitBetween(f: (p: number) => number, from: number, to: number): number {
  const [atFrom, atTo] = [f(from), f(to)];
  if (from === to || atFrom >= 0) return from;
  if (atTo <= 0) return to;
  return bracketedRoot(f, from < to ? { low: from, high: to } : { low: to, high: from });
}
