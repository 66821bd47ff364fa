import { exactTrend } from "../../stats/trend/exact-trend.js";
import { cochranArmitage } from "../../stats/trend/cochran-armitage.js";
import { fisherFreemanHalton } from "../../stats/tables/fisher-freeman-halton.js";
import { tableChiSquare } from "../../stats/tables/table-chi-square.js";
import type { Count } from "../../stats/types.js";
import type { PFact } from "../reading/facts.js";
import type { NamedTests } from "../reading/tests-named.js";
import type { PrintedNumber } from "../text/token.js";
import type { Finding } from "./finding.js";
import { asPrinted, listed, pText } from "./number-text.js";
import { type Convention, conventions, type Family, unconditionalConventions } from "./p-conventions.js";
import { named as withRounding, roundingOf } from "./rounding.js";

/** Contradictions of a p value with itself: 0.000, above 1, below 0. */
export function impossibleP({ number, relation }: PFact): Finding | null {
  if (!number) return null;
  const text = `p ${relation} ${asPrinted(number)}`;
  if (number.value > 1 || number.value < 0)
    return {
      light: "fails",
      because: `${text}: a p value lies between 0 and 1. Which value is right?`,
      reproducedBy: [],
    };
  if (number.value === 0) {
    const limit = `p < ${asPrinted({ value: 10 ** -Math.max(3, number.decimals), decimals: Math.max(3, number.decimals) })}`;
    return {
      light: "fails",
      because: `${text} cannot be: no test gives a p value of zero. Please print ${limit} or the value.`,
      reproducedBy: [],
    };
  }
  return null;
}

/** Whether a p value prints as this, or stands in the printed relation. */
function agrees(p: number, { relation, number }: PFact): string | null {
  if (relation === "not significant") return p >= 0.05 ? "" : null;
  const printed = number!;
  if (relation === "<" || relation === "≤")
    return p < printed.value || (relation === "≤" && p === printed.value) ? "" : null;
  if (relation === ">" || relation === "≥")
    return p > printed.value || (relation === "≥" && p === printed.value) || nearOne(p, printed) ? "" : null;
  const rounding = roundingOf([[p, printed]], ["rounded", "truncated"]);
  return rounding;
}

/** "p > 0.99" is printed for 1 exactly, too. */
const nearOne = (p: number, printed: PrintedNumber): boolean => p >= 1 - 1e-9 && printed.value >= 0.99;

interface Tried {
  readonly name: string;
  readonly family: Family | "table";
  readonly p: number;
}

/** Judges the p value of two independent groups by the test named, or by every convention when none is. */
export function judgeTwoGroups(
  p: PFact,
  counts: readonly [Count, Count],
  tests: NamedTests,
  recomputed: Record<string, number | null>,
): Finding {
  const groups = { first: counts[0], second: counts[1] };
  const usual = conventions(groups);
  for (const convention of usual) recomputed[convention.name] = convention.p;
  const named = tests.families.length > 0;
  const name = named ? testName(tests) : null;
  const choose = (all: readonly Convention[]): readonly Tried[] => {
    if (named) return all.filter(({ family }) => tests.families.includes(family));
    return tests.oneSided ? oneSided(all) : all.filter(({ family }) => family !== "fisher one-sided");
  };
  const first = choose(usual);
  if (first.some((test) => agrees(test.p, p) !== null)) return verdict(p, first, usual, name);
  const all = [...usual, ...unconditionalConventions(groups)];
  return verdict(p, choose(all), all, name);
}

/** One-sided values of symmetrical tests are half the two-sided ones. */
const oneSided = (all: readonly Convention[]): Tried[] => [
  ...all.filter(({ family }) => family === "fisher one-sided"),
  ...all
    .filter(({ family }) => ["chi-square", "yates", "n-1", "wald"].includes(family))
    .map(({ name, family, p }) => ({ name: `one-sided ${name}`, family, p: p / 2 })),
];

/** Judges the p value of three or more groups: exact and large-sample tests of association and of trend. */
export function judgeManyGroups(
  p: PFact,
  counts: readonly Count[],
  tests: NamedTests,
  recomputed: Record<string, number | null>,
): Finding {
  const table = counts.map(({ successes, trials }) => [successes, trials - successes]);
  const total = counts.reduce((sum, { trials }) => sum + trials, 0);
  const association: Tried[] = [];
  const chi = tableChiSquare(table);
  if (chi.p !== null) association.push({ name: "chi-square", family: "chi-square", p: chi.p });
  if (total <= 300 && counts.length <= 6) {
    const exact = fisherFreemanHalton(table);
    if (exact.p !== null) association.push({ name: "exact (Fisher–Freeman–Halton)", family: "fisher", p: exact.p });
  }
  const trend: Tried[] = [];
  if (total <= 2000) {
    const large = cochranArmitage(counts);
    const exact = exactTrend(counts);
    if (large.p !== null) trend.push({ name: "large-sample trend test", family: "chi-square", p: large.p });
    if (exact.pointProbability !== null)
      trend.push(
        { name: "exact trend test by distance", family: "fisher", p: exact.pointProbability },
        { name: "exact trend test, doubled tail", family: "fisher", p: exact.doubled },
      );
  }
  const all = [...association, ...trend];
  for (const { name, p: value } of all) recomputed[name] = value;
  const family = association.filter(
    (test) => tests.families.length === 0 || tests.families.includes(test.family as Family),
  );
  const tried = tests.trend ? trend : tests.families.length > 0 ? family : all;
  if (tried.length === 0)
    return { light: "cannot be checked", because: "The table is too large for this test here.", reproducedBy: [] };
  return verdict(p, tried, all, tests.trend ? "the trend test" : null);
}

function verdict(p: PFact, tried: readonly Tried[], all: readonly Tried[], testNamed: string | null): Finding {
  const fits = tried.flatMap((test) => {
    const how = agrees(test.p, p);
    return how === null ? [] : [how === "" || how === "rounded" ? test.name : withRounding(test.name, "truncated")];
  });
  const text = p.number ? `p ${p.relation} ${asPrinted(p.number)}` : "p not significant";
  if (fits.length > 0)
    return {
      light: "holds",
      because: `${text} is reproduced by: ${fits.join("; ")}.${fragile(all, fits)}`,
      reproducedBy: fits,
    };
  const others = all
    .filter((test) => !tried.includes(test))
    .flatMap((test) => (agrees(test.p, p) === null ? [] : [test.name]));
  const gives = listed(tried.slice(0, 3).map((test) => `${pText(test.p)} (${test.name})`));
  const subject = testNamed ?? "The counts give";
  const start = testNamed ? `${subject} gives ${gives} here` : `${subject} p = ${gives}`;
  const is =
    others.length > 0 ? `; ${text} is that of ${listed(others.slice(0, 2))}` : `; no usual convention gives ${text}`;
  return {
    light: "fails",
    because: `${capital(start)}${is}. Which test was used?`,
    reproducedBy: others.length > 0 && testNamed ? others : [],
  };
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** Says when the verdict at 0.05 hangs on the convention. */
function fragile(all: readonly Tried[], fits: readonly string[]): string {
  const two = all.filter(({ name }) => !name.startsWith("one-sided"));
  const below = two.filter(({ p }) => p < 0.05).length;
  if (fits.length === 0 || below === 0 || below === two.length) return "";
  return ` Fragile: ${below} of ${two.length} conventions give a value below 0.05.`;
}

function testName({ families, oneSided: single }: NamedTests): string {
  if (families.includes("fisher")) return "Fisher's exact test";
  if (families.includes("fisher one-sided") || single) return "the one-sided test";
  if (families.includes("mid-p")) return "the mid-p test";
  if (families.includes("yates") && !families.includes("chi-square")) return "chi-square with Yates's correction";
  if (families.includes("n-1") && !families.includes("chi-square")) return "the N − 1 chi-square";
  if (families.includes("chi-square")) return "the chi-square test";
  return "the test named";
}
