import { describe, expect, it, test } from "vitest";
import { agreementWithin } from "../../../src/stats/agreement/agreement-within.js";
import { cohenKappa } from "../../../src/stats/agreement/cohen-kappa.js";
import { crossTable } from "../../../src/stats/agreement/cross-table.js";
import { kappaMaximum } from "../../../src/stats/agreement/kappa-maximum.js";
import { prevalenceBias } from "../../../src/stats/agreement/prevalence-bias.js";
import { specificAgreement } from "../../../src/stats/agreement/specific-agreement.js";

const table = [
  [12, 4, 0, 0],
  [5, 10, 4, 0],
  [0, 4, 9, 3],
  [0, 0, 2, 7],
];

describe("agreement within a distance", () => {
  it("counts the diagonal, then its neighbours, then everything", () => {
    expect(agreementWithin(table)).toMatchObject({ agreeing: 38, n: 60 });
    expect(agreementWithin(table, { distance: 1 })).toMatchObject({ agreeing: 60, n: 60, interval: { high: 1 } });
    expect(
      agreementWithin(
        [
          [0, 0, 7],
          [0, 0, 0],
          [0, 0, 3],
        ],
        { distance: 2 },
      ).agreeing,
    ).toBe(10);
  });

  it("refuses a distance that is no whole number", () => {
    expect(() => agreementWithin(table, { distance: 0.5 })).toThrow(
      new RangeError("agreementWithin: distance must be an integer of at least 0, got 0.5"),
    );
  });
});

describe("specific agreement", () => {
  test("positive and negative agreement of 2 x 2: 2a/(2a+b+c) and 2d/(2d+b+c)", () => {
    const { grades } = specificAgreement([
      [80, 10],
      [5, 5],
    ]);
    expect(grades[0]).toMatchObject({ both: 80, one: 15, value: { estimate: 160 / 175 } });
    expect(grades[1]).toMatchObject({ both: 5, one: 15, value: { estimate: 10 / 25 } });
  });

  it("has Wilson's limits of both among either, carried over", () => {
    // Wilson 5/20 by hand in double precision: 0.11186170 to 0.46870088; then 2q/(1+q).
    const { value } = specificAgreement([
      [80, 10],
      [5, 5],
    ]).grades[1]!;
    expect(value).toMatchObject({
      interval: { low: expect.closeTo(0.20121513542, 10), high: expect.closeTo(0.63825232865, 10) },
    });
  });

  it("says when neither rater gave a grade", () => {
    expect(
      specificAgreement([
        [3, 0],
        [0, 0],
      ]).grades[1]!.value,
    ).toEqual({
      estimate: null,
      because: "neither rater gave this grade",
    });
  });
});

describe("attainable maximum", () => {
  /** Every table with these margins, by brute force. */
  function best(rows: number[], columns: number[], weights: "unweighted" | "linear" | "quadratic"): number {
    let most = -Infinity;
    const size = rows.length;
    const cells = new Array<number>(size * size).fill(0);
    const fill = (place: number, rowLeft: number[], columnLeft: number[]): void => {
      if (place === size * size) {
        if (rowLeft.some(Boolean) || columnLeft.some(Boolean)) return;
        const filled = rowLeft.map((_, i) => cells.slice(i * size, (i + 1) * size));
        most = Math.max(most, cohenKappa(filled, { weights }).estimate!);
        return;
      }
      const [i, j] = [Math.floor(place / size), place % size];
      const [from, to] = [j === size - 1 ? rowLeft[i]! : 0, Math.min(rowLeft[i]!, columnLeft[j]!)];
      for (let count = from; count <= to; count++) {
        cells[place] = count;
        fill(place + 1, rowLeft.with(i, rowLeft[i]! - count), columnLeft.with(j, columnLeft[j]! - count));
      }
    };
    fill(0, rows, columns);
    return most;
  }

  it("is the best of all tables with the same margins, for every weight", () => {
    for (const [rows, columns] of [
      [
        [3, 2, 2],
        [1, 4, 2],
      ],
      [
        [5, 1, 1],
        [1, 1, 5],
      ],
      [
        [2, 2, 3],
        [2, 2, 3],
      ],
      [
        [4, 0, 2],
        [2, 3, 1],
      ],
    ] as const)
      for (const weights of ["unweighted", "linear", "quadratic"] as const) {
        const filled = best([...rows], [...columns], weights);
        const any = rows.map(() => columns.map(() => 0 as number));
        // Any table with these margins will do: matched in order.
        const left: number[] = [...columns];
        rows.forEach((count, i) => {
          let toPlace = count as number;
          left.forEach((free, j) => {
            const placed = Math.min(toPlace, free);
            any[i]![j] = placed;
            left[j] = free - placed;
            toPlace -= placed;
          });
        });
        expect(kappaMaximum(any, { weights }).estimate).toBeCloseTo(filled, 13);
      }
  });

  it("is 1 exactly when the margins are alike, and says when one grade was used", () => {
    expect(
      kappaMaximum([
        [0, 3],
        [3, 4],
      ]).estimate,
    ).toBe(1);
    expect(
      kappaMaximum([
        [0, 0],
        [0, 4],
      ]),
    ).toEqual({
      estimate: null,
      because: "both raters used only one and the same grade",
    });
  });
});

describe("prevalence and bias", () => {
  test("of 2 x 2 are (a - d)/n and (b - c)/n", () => {
    expect(
      prevalenceBias([
        [80, 10],
        [5, 5],
      ]).grades[0],
    ).toEqual({
      grade: 0,
      prevalence: 175 / 200,
      prevalenceIndex: 0.75,
      biasIndex: 0.05,
    });
  });
});

describe("cross-table", () => {
  it("keeps the radiographs of each cell and counts the incomplete", () => {
    expect(crossTable([0, 1, 1, null, 0], [0, 1, 0, 1, null], { grades: 2 })).toEqual({
      method: "cross-table",
      grades: 2,
      n: 3,
      incomplete: 2,
      table: [
        [1, 0],
        [1, 1],
      ],
      members: [
        [[0], []],
        [[2], [1]],
      ],
    });
  });

  it("refuses grades outside the scale and columns of unequal length", () => {
    expect(() => crossTable([0, 2], [0, 1], { grades: 2 })).toThrow(
      new RangeError("crossTable: grade of radiograph 2 must be 0 to 1, got 2"),
    );
    expect(() => crossTable([0], [0, 1], { grades: 2 })).toThrow(
      new RangeError("crossTable: both raters must have the same radiographs, got 1 and 2"),
    );
    expect(() => crossTable([0], [0], { grades: 0 })).toThrow(
      new RangeError("crossTable: grades must be an integer of at least 1, got 0"),
    );
  });
});
