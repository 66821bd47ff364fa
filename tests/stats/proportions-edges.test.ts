// Whatever numbers come in for one proportion, two groups, pairs or limbs: an answer without NaN in it, null with a reason,
// or a RangeError that names the function.
import fc from "fast-check";
import { test } from "vitest";
import { clopperPearson } from "../../src/stats/clopper-pearson.js";
import { clusteredWilson } from "../../src/stats/clustered/clustered-wilson.js";
import { correlationWithinChild } from "../../src/stats/clustered/correlation-within-child.js";
import { firstLimb } from "../../src/stats/clustered/first-limb.js";
import { perChild } from "../../src/stats/clustered/per-child.js";
import { raoScott } from "../../src/stats/clustered/rao-scott.js";
import { benjaminiHochberg } from "../../src/stats/many-tests/benjamini-hochberg.js";
import { hochberg } from "../../src/stats/many-tests/hochberg.js";
import { holm } from "../../src/stats/many-tests/holm.js";
import { binomialTest } from "../../src/stats/one-proportion/binomial-test.js";
import { consecutiveSuccesses } from "../../src/stats/one-proportion/consecutive-successes.js";
import { exactOneSided } from "../../src/stats/one-proportion/exact-one-sided.js";
import { intervalCoverage } from "../../src/stats/one-proportion/interval-coverage.js";
import { nextCases } from "../../src/stats/one-proportion/next-cases.js";
import { proportionInterval, proportionMethods } from "../../src/stats/one-proportion/proportion-intervals.js";
import { bowker } from "../../src/stats/paired/bowker.js";
import { mcNemar } from "../../src/stats/paired/mc-nemar.js";
import { newcombePaired } from "../../src/stats/paired/newcombe-paired.js";
import { orderedChange } from "../../src/stats/paired/ordered-change.js";
import { stuartMaxwell } from "../../src/stats/paired/stuart-maxwell.js";
import { tango } from "../../src/stats/paired/tango.js";
import { agrestiCaffo } from "../../src/stats/two-groups/agresti-caffo.js";
import { barnard } from "../../src/stats/two-groups/barnard.js";
import { boschloo } from "../../src/stats/two-groups/boschloo.js";
import { chiSquareTwoGroups } from "../../src/stats/two-groups/chi-square-two-groups.js";
import { conditionalOddsRatio } from "../../src/stats/two-groups/conditional-odds-ratio.js";
import { exactDifference } from "../../src/stats/two-groups/exact-difference.js";
import { fisherExact } from "../../src/stats/two-groups/fisher-exact.js";
import { katz } from "../../src/stats/two-groups/katz.js";
import { koopman } from "../../src/stats/two-groups/koopman.js";
import { miettinenNurminen } from "../../src/stats/two-groups/miettinen-nurminen.js";
import { newcombe } from "../../src/stats/two-groups/newcombe.js";
import { numberNeededToTreat } from "../../src/stats/two-groups/number-needed-to-treat.js";
import { woolf } from "../../src/stats/two-groups/woolf.js";
import { answersOrRefuses } from "./answers-or-refuses.js";

const strange = fc.constantFrom(-1, 0.5, NaN, Infinity, -Infinity, 2 ** 53 - 1, 2 ** 53, 1e300, -0);
const mostly = (usual: fc.Arbitrary<number>): fc.Arbitrary<number> =>
  fc.oneof({ weight: 12, arbitrary: usual }, { weight: 1, arbitrary: strange });
const trials = mostly(fc.constantFrom(1, 2, 3, 7, 40, 1000, 2 ** 31, 1e12));
const count = trials.chain((n) =>
  mostly(fc.constantFrom(0, 1, 2, Math.floor(n / 2), n - 1, n)).map((successes) => ({ successes, trials: n })),
);
const level = mostly(fc.constantFrom(1e-300, 1e-9, 0.5, 0.95, 1 - 1e-9, 1 - 2 ** -53, 0, 1));
const groups = fc.record({ first: count, second: count });
const smallCount = fc.record({ successes: mostly(fc.nat(4)), trials: mostly(fc.constantFrom(4, 9)) });
const smallGroups = fc.record({ first: smallCount, second: smallCount });
const tinyCount = fc.record({ successes: mostly(fc.nat(1)), trials: mostly(fc.constantFrom(1, 2)) });
const tinyGroups = fc.record({ first: tinyCount, second: tinyCount });
const cell = mostly(fc.constantFrom(0, 1, 2, 5, 300));
const pairs = fc.record({ both: cell, firstOnly: cell, secondOnly: cell, neither: cell });
const square = fc
  .integer({ min: 1, max: 4 })
  .chain((size) =>
    fc.array(fc.array(cell, { minLength: size, maxLength: size }), { minLength: size, maxLength: size }),
  );
const children = fc.array(fc.array(fc.boolean(), { maxLength: 2 }), { maxLength: 6 });
const pValues = fc.array(mostly(fc.constantFrom(0, 5e-324, 0.05, 1)), { maxLength: 5 });

type Calls = fc.Arbitrary<() => unknown>;
/** Calls of a function of one argument and a level. */
const leveled = <Data>(
  data: fc.Arbitrary<Data>,
  statistic: (data: Data, options: { readonly level: number }) => unknown,
): Calls =>
  fc.tuple(data, level).map(
    ([x, y]) =>
      (): unknown =>
        statistic(x, { level: y }),
  );
const plain = <Data>(data: fc.Arbitrary<Data>, statistic: (data: Data) => unknown): Calls =>
  data.map((x) => (): unknown => statistic(x));

const calls: [string, Calls][] = [
  ...proportionMethods.map((method): [string, Calls] => [
    method,
    leveled(count, (x, options) => proportionInterval(x, { method, ...options })),
  ]),
  ["clopperPearson", leveled(count, (x, options) => clopperPearson(x.successes, x.trials, options))],
  ["exactOneSided", leveled(count, (x, options) => exactOneSided(x.successes, x.trials, options))],
  [
    "binomialTest",
    fc.tuple(count, level).map(
      ([x, proportion]) =>
        () =>
          binomialTest(x.successes, x.trials, { proportion }),
    ),
  ],
  ["consecutiveSuccesses", leveled(level, consecutiveSuccesses)],
  [
    "nextCases",
    fc.tuple(count, cell).map(
      ([x, next]) =>
        () =>
          nextCases(x.successes, x.trials, { next }),
    ),
  ],
  ["intervalCoverage", leveled(mostly(fc.constantFrom(1, 2, 5)), intervalCoverage)],
  ["newcombe", leveled(groups, newcombe)],
  ["miettinenNurminen", leveled(groups, miettinenNurminen)],
  ["agrestiCaffo", leveled(groups, agrestiCaffo)],
  ["katz", leveled(groups, katz)],
  ["koopman", leveled(groups, koopman)],
  ["woolf", leveled(groups, woolf)],
  ["fisherExact", plain(smallGroups, fisherExact)],
  ["conditionalOddsRatio", leveled(smallGroups, conditionalOddsRatio)],
  ["chiSquareTwoGroups", plain(groups, chiSquareTwoGroups)],
  ["exactDifference", leveled(tinyGroups, exactDifference)],
  ["boschloo", plain(smallGroups, boschloo)],
  ["barnard", plain(smallGroups, barnard)],
  ["mcNemar", plain(pairs, mcNemar)],
  ["newcombePaired", leveled(pairs, newcombePaired)],
  ["tango", leveled(pairs, tango)],
  ["bowker", plain(square, bowker)],
  ["stuartMaxwell", plain(square, stuartMaxwell)],
  ["orderedChange", plain(square, orderedChange)],
  ["clusteredWilson", leveled(children, clusteredWilson)],
  ["correlationWithinChild", plain(children, correlationWithinChild)],
  ["firstLimb", leveled(children, firstLimb)],
  ["perChild", leveled(children, perChild)],
  ["raoScott", leveled(children, raoScott)],
  ["holm", plain(pValues, holm)],
  ["hochberg", plain(pValues, hochberg)],
  ["benjaminiHochberg", plain(pValues, benjaminiHochberg)],
  ["numberNeededToTreat|newcombe", leveled(groups, numberNeededToTreat)],
];

test.each(calls)("%s answers, gives a reason, or refuses by name", answersOrRefuses);
