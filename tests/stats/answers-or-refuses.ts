import fc from "fast-check";
import { expect } from "vitest";
import { faults } from "../faults.js";

/**
 * Holds that a statistic, called with whatever numbers come, gives a sound result or refuses with a RangeError in its own
 * name, and that it gives a result at all.
 * @param name name of the function, or several parted by |
 */
export function answersOrRefuses(name: string, call: fc.Arbitrary<() => unknown>): void {
  let answers = 0;
  fc.assert(
    fc.property(call, (run) => {
      let result: unknown;
      try {
        result = run();
      } catch (error) {
        expect(error).toBeInstanceOf(RangeError);
        expect((error as Error).message).toMatch(new RegExp(`^(${name}): [^A-Z].*[^.]$`));
        return;
      }
      answers++;
      expect(faults(result)).toEqual([]);
    }),
    { numRuns: 300 },
  );
  expect(answers).toBeGreaterThan(0);
}
