import fc from "fast-check";
import { expect, it, test } from "vitest";
import { random } from "../../../src/numeric/random.js";
import { benjaminiHochberg } from "../../../src/stats/many-tests/benjamini-hochberg.js";
import { hochberg } from "../../../src/stats/many-tests/hochberg.js";
import { holm } from "../../../src/stats/many-tests/holm.js";
import { r } from "../../r.js";

const methods = [
  { name: "holm", ours: holm },
  { name: "hochberg", ours: hochberg },
  { name: "BH", ours: benjaminiHochberg },
] as const;

it("gives the decisions of the published example of 15 tests", () => {
  // Benjamini and Hochberg 1995, J R Stat Soc B 57:289-300, section 3.2: of these, at 0.05, Hochberg's procedure rejects
  // three and the procedure on the false discovery rate four. From memory.
  const p = [
    0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262, 0.5719, 0.6528, 0.759, 1,
  ];
  const findings = (adjusted: readonly number[]): number => adjusted.filter((value) => value <= 0.05).length;
  expect(findings(hochberg(p).adjusted)).toBe(3);
  expect(findings(benjaminiHochberg(p).adjusted)).toBe(4);
});

test.each(methods)(
  "agrees with R's p.adjust, $name, on 500 sets with ties, also when more tests were run",
  async (m) => {
    const stream = random(7);
    const sets = Array.from({ length: 500 }, () => {
      const p = Array.from({ length: 1 + stream.below(12) }, () =>
        stream.below(4) === 0 ? stream.below(11) / 10 : stream.uniform() ** 3,
      );
      return { p, tests: p.length + (stream.below(2) === 0 ? 0 : stream.below(9)) };
    });
    const theirs = await r(
      `unlist(list(${sets.map(({ p, tests }) => `p.adjust(c(${p.join(",")}), "${m.name}", ${tests})`).join(",")}))`,
    );
    let at = 0;
    for (const { p, tests } of sets)
      for (const value of m.ours(p, { tests }).adjusted)
        expect(Math.abs(value - theirs[at]!), `${p.join(", ")} of ${tests}`).toBeLessThanOrEqual(2e-15 * theirs[at++]!);
    expect(at).toBe(theirs.length);
  },
);

it("keeps order, never lowers a p value, and ranks the methods", () => {
  const values = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 30 });
  fc.assert(
    fc.property(values, (p) => {
      const [step, up, rate] = [holm(p).adjusted, hochberg(p).adjusted, benjaminiHochberg(p).adjusted];
      p.forEach((value, i) => {
        expect(rate[i]).toBeGreaterThanOrEqual(value * (1 - 1e-15));
        expect(up[i]).toBeGreaterThanOrEqual(rate[i]! * (1 - 1e-15));
        expect(step[i]).toBeGreaterThanOrEqual(up[i]! * (1 - 1e-15));
        expect(step[i]).toBeLessThanOrEqual(1);
        p.forEach((other, j) => {
          if (value < other) for (const a of [step, up, rate]) expect(a[i]).toBeLessThanOrEqual(a[j]!);
        });
      });
    }),
  );
});

it("counts the tests and repeats its input", () => {
  expect(holm([0.02, 0.5], { tests: 10 })).toEqual({ method: "holm", tests: 10, p: [0.02, 0.5], adjusted: [0.2, 1] });
});

test.each([
  [() => holm([]), "holm: p must hold at least one p value, got 0"],
  [() => holm([0.1, NaN]), "holm: p[1] must lie in [0, 1], got NaN"],
  [() => hochberg([1.2]), "hochberg: p[0] must lie in [0, 1], got 1.2"],
  [
    () => benjaminiHochberg([0.1, 0.2], { tests: 1 }),
    "benjaminiHochberg: tests must be an integer of at least 2, got 1",
  ],
])("%s is refused: %s", (call, message) => {
  expect(call).toThrow(new RangeError(message));
});
