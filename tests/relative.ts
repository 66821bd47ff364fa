import { expect } from "vitest";

/** Fails unless both are equal (also Infinity and 0) or differ by at most `tolerance` of the expected value. */
export function expectRelative(actual: number, expected: number, tolerance: number, of: string): void {
  if (actual === expected) return;
  const error = Math.abs(actual - expected) / Math.abs(expected);
  if (!(error <= tolerance)) expect.fail(`${of}: got ${actual}, expected ${expected}, relative error ${error}`);
}
