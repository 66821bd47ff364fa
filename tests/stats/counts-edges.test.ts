// Whatever numbers come in: an answer without NaN in it, null with a reason, or a RangeError that names the function.
import fc from "fast-check";
import { test } from "vitest";
import { seriesRates } from "../../src/stats/series/series-rates.js";
import { breslowDay } from "../../src/stats/strata/breslow-day.js";
import { exactCommonOddsRatio } from "../../src/stats/strata/exact-common-odds-ratio.js";
import { exactHomogeneity } from "../../src/stats/strata/exact-homogeneity.js";
import { generalisedCmh } from "../../src/stats/strata/generalised-cmh.js";
import { groupOverlap } from "../../src/stats/strata/group-overlap.js";
import { mantelHaenszel } from "../../src/stats/strata/mantel-haenszel.js";
import { standardisedProportion } from "../../src/stats/strata/standardised-proportion.js";
import type { Stratum } from "../../src/stats/strata/strata.js";
import { woolfHomogeneity } from "../../src/stats/strata/woolf-homogeneity.js";
import { fisherFreemanHalton } from "../../src/stats/tables/fisher-freeman-halton.js";
import { jonckheereTerpstra } from "../../src/stats/tables/jonckheere-terpstra.js";
import { kruskalWallis } from "../../src/stats/tables/kruskal-wallis.js";
import { linearByLinear } from "../../src/stats/tables/linear-by-linear.js";
import { tableChiSquare } from "../../src/stats/tables/table-chi-square.js";
import { cochranArmitage } from "../../src/stats/trend/cochran-armitage.js";
import { exactTrend } from "../../src/stats/trend/exact-trend.js";
import type { Count } from "../../src/stats/types.js";
import { answersOrRefuses } from "./answers-or-refuses.js";

const strange = fc.constantFrom(-1, 0.5, NaN, Infinity, -Infinity, 2 ** 53, 1e300, -0);
const number = fc.oneof({ weight: 25, arbitrary: fc.nat(6) }, { weight: 1, arbitrary: strange });
const trial = fc.oneof({ weight: 25, arbitrary: fc.integer({ min: 3, max: 8 }) }, { weight: 1, arbitrary: strange });
const count: fc.Arbitrary<Count> = fc.record({ successes: fc.oneof(fc.nat(3), number), trials: trial });
const groups = fc.array(count, { maxLength: 5 });
const strata: fc.Arbitrary<Stratum[]> = fc.array(fc.record({ first: count, second: count }), { maxLength: 4 });
const table = fc.array(fc.array(number, { maxLength: 4 }), { maxLength: 4 });
/** A table with equally long rows, so that most are answered, and the number of its rows. */
const evenTable = fc
  .tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 }))
  .chain(([rows, columns]) =>
    fc.array(fc.array(number, { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows }),
  );
const scores = fc.array(fc.oneof(number, fc.double()), { maxLength: 5 });

const calls: [string, fc.Arbitrary<() => unknown>][] = [
  ["mantelHaenszel", strata.map((x) => () => mantelHaenszel(x))],
  ["exactCommonOddsRatio", strata.map((x) => () => exactCommonOddsRatio(x))],
  ["breslowDay", strata.map((x) => () => breslowDay(x))],
  ["exactHomogeneity", strata.map((x) => () => exactHomogeneity(x))],
  ["woolfHomogeneity", strata.map((x) => () => woolfHomogeneity(x))],
  ["groupOverlap", strata.map((x) => () => groupOverlap(x))],
  [
    "generalisedCmh",
    fc
      .oneof(
        fc.array(table, { maxLength: 3 }),
        evenTable.map((x) => [x]),
      )
      .map((x) => () => generalisedCmh(x)),
  ],
  [
    "standardisedProportion",
    fc.tuple(groups, scores).map(
      ([x, y]) =>
        () =>
          standardisedProportion(x, y),
    ),
  ],
  ["fisherFreemanHalton", table.map((x) => () => fisherFreemanHalton(x))],
  ["tableChiSquare", table.map((x) => () => tableChiSquare(x))],
  [
    "linearByLinear",
    fc.tuple(table, scores).map(
      ([x, y]) =>
        () =>
          linearByLinear(x, { rowScores: y }),
    ),
  ],
  ["jonckheereTerpstra", table.map((x) => () => jonckheereTerpstra(x))],
  ["kruskalWallis", table.map((x) => () => kruskalWallis(x))],
  [
    "cochranArmitage",
    fc.tuple(groups, scores).map(
      ([x, y]) =>
        () =>
          cochranArmitage(x, { scores: y }),
    ),
  ],
  [
    "exactTrend",
    fc.tuple(groups, scores).map(
      ([x, y]) =>
        () =>
          exactTrend(x, y.length === x.length ? { scores: y } : {}),
    ),
  ],
  [
    "seriesRates",
    groups.map(
      (x) => () =>
        seriesRates([
          { name: "A", grades: x.map(({ successes, trials }, i) => ({ grade: `${i}`, successes, cases: trials })) },
        ]),
    ),
  ],
];

test.each(calls)("%s answers, gives a reason, or refuses by name", answersOrRefuses);
