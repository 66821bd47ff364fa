import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { cohenKappa } from "../../../src/stats/agreement/cohen-kappa.js";
import reference from "../../reference/agreement-library.json";
import { example } from "./examples.js";

type Table = number[][];

describe("published kappas", () => {
  test("Cohen 1968: 200 patients, three diagnoses, three sets of weights", () => {
    const { input, at } = example("D-cohen1968");
    const table = input.table as Table;
    expect(cohenKappa(table).estimate).toBeCloseTo(at("kappa"), 13);
    const symmetric = { disagreement: input.disagreement_weights as Table };
    expect(cohenKappa(table, { weights: symmetric }).estimate).toBeCloseTo(at("kw"), 13);
    const asymmetric = { disagreement: input.asymmetric_weights as Table };
    expect(cohenKappa(table, { weights: asymmetric }).estimate).toBeCloseTo(at("kw2"), 13);
  });

  test("Feinstein and Cicchetti 1990: the same agreement, two kappas", () => {
    const { input, at } = example("D-feinstein-cicchetti1990");
    for (const [name, table] of Object.entries(input.tables as Record<string, Table>)) {
      const result = cohenKappa(table);
      expect(result.estimate).toBeCloseTo(at(`${name}_kappa`), 13);
      expect(result).toMatchObject({ observed: at(`${name}_po`) });
    }
  });

  test("Sim and Wright 2005, Table 2: unweighted, linear and quadratic", () => {
    const { input, at } = example("D-sim-wright2005-pain");
    const table = input.table as Table;
    expect(cohenKappa(table).estimate).toBeCloseTo(at("kappa"), 13);
    expect(cohenKappa(table, { weights: "linear" }).estimate).toBeCloseTo(at("kl"), 13);
    expect(cohenKappa(table, { weights: "quadratic" }).estimate).toBeCloseTo(at("kq"), 13);
  });

  test("Altman 1991, Table 14.3: kappa with its printed interval, and linear weights", () => {
    const { input, at } = example("D-altman1991-mast-rast");
    const result = cohenKappa(input.table as Table);
    expect(result.estimate).toBeCloseTo(at("kappa"), 13);
    expect(result).toMatchObject({
      interval: { low: expect.closeTo(at("lo_fce"), 12), high: expect.closeTo(at("hi_fce"), 12) },
    });
    expect(cohenKappa(input.table as Table, { weights: "linear" }).estimate).toBeCloseTo(at("kw"), 13);
  });

  test("a printout of a general statistics system: both standard errors, intervals and tests", () => {
    const { input, at } = example("D-statsmodels-table");
    const table = input.table as Table;
    expect(cohenKappa(table)).toMatchObject({
      estimate: expect.closeTo(at("kappa"), 12),
      standardError: expect.closeTo(at("se"), 12),
      nullStandardError: expect.closeTo(at("se0"), 12),
      interval: { low: expect.closeTo(at("lo"), 12), high: expect.closeTo(at("hi"), 12) },
      test: { z: expect.closeTo(at("z"), 11) },
    });
    expect(cohenKappa(table, { weights: "linear" })).toMatchObject({
      estimate: expect.closeTo(at("kw"), 12),
      standardError: expect.closeTo(at("wse"), 12),
      nullStandardError: expect.closeTo(at("wse0"), 12),
      interval: { low: expect.closeTo(at("wlo"), 12), high: expect.closeTo(at("whi"), 12) },
      test: { z: expect.closeTo(at("wz"), 11) },
    });
  });

  test("Landis and Koch 1977: five sets of agreement weights given as disagreement", () => {
    const { input, at } = example("D-landis-koch-winnipeg");
    const apart = (agreement: Table) => ({ disagreement: agreement.map((row) => row.map((weight) => 1 - weight)) });
    const byDistance = (weights: number[]) =>
      apart([0, 1, 2, 3].map((i) => [0, 1, 2, 3].map((j) => weights[Math.abs(i - j)]!)));
    const merged = (groups: number[]) =>
      apart([0, 1, 2, 3].map((i) => [0, 1, 2, 3].map((j) => (groups[i] === groups[j] ? 1 : 0))));
    const table = input.table as Table;
    expect(cohenKappa(table).estimate).toBeCloseTo(at("k1"), 13);
    expect(cohenKappa(table, { weights: merged([1, 1, 3, 4]) }).estimate).toBeCloseTo(at("k2"), 13);
    expect(cohenKappa(table, { weights: merged([1, 1, 3, 3]) }).estimate).toBeCloseTo(at("k3"), 13);
    expect(cohenKappa(table, { weights: byDistance([1, 1, 0, 0]) }).estimate).toBeCloseTo(at("k4"), 13);
    expect(cohenKappa(table, { weights: byDistance([1, 0.5, 0.25, 0]) }).estimate).toBeCloseTo(at("k5"), 13);
  });

  test("Gwet 2008, Altman 1991 Table 14.4 and Artstein and Poesio 2008: two grades", () => {
    for (const id of ["D-gwet2008", "D-altman1991-prevalence-a", "D-artstein-poesio2008"]) {
      const { input, at } = example(id);
      expect(cohenKappa(input.table as Table).estimate).toBeCloseTo(at("kappa"), 13);
    }
  });
});

test.each(reference.kappa)(`equals ${reference.source} on table $number`, (given) => {
  for (const weights of ["unweighted", "linear", "quadratic"] as const) {
    const expected = given[weights];
    const result = cohenKappa(given.table, { weights });
    // Half an hour of rounding in two long sums: relative 1e-11.
    expect(result.estimate! / expected.kappa).toBeCloseTo(1, 11);
    expect(result).toMatchObject({
      standardError: expect.closeTo(expected.standardError, 12),
      nullStandardError: expect.closeTo(expected.nullStandardError, 12),
    });
  }
});

describe("the definition", () => {
  const tables = fc.integer({ min: 2, max: 5 }).chain((size) =>
    fc.array(fc.array(fc.integer({ min: 1, max: 40 }), { minLength: size, maxLength: size }), {
      minLength: size,
      maxLength: size,
    }),
  );

  it("never exceeds observed agreement when unweighted, and turning the table over changes nothing", () => {
    fc.assert(
      fc.property(tables, (table) => {
        const result = cohenKappa(table);
        const turned = cohenKappa(table.map((_, i) => table.map((row) => row[i]!)));
        if (result.estimate === null || turned.estimate === null) throw new Error("estimable");
        expect(result.estimate).toBeLessThanOrEqual(result.observed);
        expect(turned.estimate).toBeCloseTo(result.estimate, 12);
        expect(turned.standardError).toBeCloseTo(result.standardError, 12);
      }),
    );
  });

  it("is the kappa of 2 x 2 whatever the weights, when there are two grades", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 50 }), { minLength: 4, maxLength: 4 }), ([a, b, c, d]) => {
        const table = [
          [a!, b!],
          [c!, d!],
        ];
        const [one, two] = [cohenKappa(table), cohenKappa(table, { weights: "quadratic" })];
        expect(two.estimate).toBe(one.estimate);
      }),
    );
  });

  it("with linear weights is the mean over the cut-points, weighted by their chance disagreement", () => {
    const table = [
      [12, 4, 0, 0],
      [5, 10, 4, 0],
      [0, 4, 9, 3],
      [0, 0, 2, 7],
    ];
    let above = 0;
    let below = 0;
    for (const cut of [1, 2, 3]) {
      const merged = [0, 1].map((i) =>
        [0, 1].map((j) => {
          let sum = 0;
          table.forEach((row, a) =>
            row.forEach((count, b) => (sum += a >= cut === Boolean(i) && b >= cut === Boolean(j) ? count : 0)),
          );
          return sum;
        }),
      );
      const result = cohenKappa(merged);
      if (result.estimate === null) throw new Error("estimable");
      above += result.observed - result.chance;
      below += 1 - result.chance;
    }
    expect(cohenKappa(table, { weights: "linear" }).estimate).toBeCloseTo(above / below, 13);
  });
});

describe("degenerate tables", () => {
  it("says why there is no kappa when both used one grade", () => {
    const because = "chance agreement is 1: both raters used only one and the same grade";
    expect(
      cohenKappa([
        [0, 0],
        [0, 17],
      ]),
    ).toMatchObject({ estimate: null, because, n: 17 });
    expect(cohenKappa([[17]])).toMatchObject({ estimate: null, because });
  });

  it("gives 0 with standard error 0 when one rater used a single grade", () => {
    for (const weights of ["unweighted", "linear", "quadratic"] as const)
      expect(
        cohenKappa(
          [
            [3, 0, 0],
            [4, 0, 0],
            [5, 0, 0],
          ],
          { weights },
        ),
      ).toMatchObject({
        estimate: expect.closeTo(0, 15),
        standardError: 0,
        test: { estimate: null, because: "one rater used a single grade, so kappa is always 0" },
      });
  });

  it("is exactly 1 with standard error 0 when all agree, and handles one radiograph", () => {
    expect(
      cohenKappa([
        [3, 0],
        [0, 4],
      ]),
    ).toMatchObject({ estimate: 1, standardError: 0, interval: { low: 1, high: 1 } });
    expect(
      cohenKappa([
        [0, 1],
        [0, 0],
      ]),
    ).toMatchObject({ estimate: 0, standardError: 0 });
  });
});

describe("wrong calls", () => {
  test.each([
    [[], "cohenKappa: the table must have at least one row"],
    [[[1, 2]], "cohenKappa: the table must be square (1 rows), row 1 has 2 columns"],
    [
      [
        [1, -2],
        [0, 1],
      ],
      "cohenKappa: row 1, column 2 must be a count of at least 0, got -2",
    ],
    [
      [
        [1, 0.5],
        [0, 1],
      ],
      "cohenKappa: row 1, column 2 must be a count of at least 0, got 0.5",
    ],
    [
      [
        [0, 0],
        [0, 0],
      ],
      "cohenKappa: the table must count at least one radiograph, got none",
    ],
  ])("%j is refused", (table, message) => {
    expect(() => cohenKappa(table)).toThrow(new RangeError(message));
  });

  it("refuses unknown options, weights and levels", () => {
    const table = [
      [1, 0],
      [0, 1],
    ];
    expect(() => cohenKappa(table, { weight: "linear" } as never)).toThrow(
      new TypeError('cohenKappa: no option is named "weight" (known: weights, level)'),
    );
    expect(() => cohenKappa(table, { weights: "cubic" as never })).toThrow(
      new TypeError('cohenKappa: weights must be one of unweighted, linear, quadratic, got "cubic"'),
    );
    expect(() => cohenKappa(table, { level: 95 })).toThrow(
      new RangeError("cohenKappa: level must lie between 0 and 1, got 95"),
    );
    expect(() => cohenKappa(table, { weights: { disagreement: [[0, 1]] } })).toThrow(
      new RangeError("cohenKappa: weights must be 2 by 2, like the table"),
    );
    expect(() =>
      cohenKappa(table, {
        weights: {
          disagreement: [
            [1, 1],
            [1, 0],
          ],
        },
      }),
    ).toThrow(new RangeError("cohenKappa: weight in row 1, column 1 must be 0, got 1"));
    expect(() =>
      cohenKappa(table, {
        weights: {
          disagreement: [
            [0, 0],
            [0, 0],
          ],
        },
      }),
    ).toThrow(new RangeError("cohenKappa: at least one weight must be above 0"));
  });
});
