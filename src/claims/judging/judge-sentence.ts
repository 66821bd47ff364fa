import type { Claim, Light } from "../claim.js";
import type { Count } from "../../stats/types.js";
import type { LinkedSentence, ProportionGroup } from "../reading/link.js";
import type { Place } from "../reading/facts.js";
import type { TextReading } from "../read-text.js";
import { fisherExact } from "../../stats/two-groups/fisher-exact.js";
import { conventions } from "./p-conventions.js";
import { judgeConclusion } from "./judge-conclusion.js";
import { judgeEstimate, judgeLoose } from "./judge-estimate.js";
import { judgePClaim } from "./judge-p-claim.js";
import { type Judged, judgeProportion } from "./judge-proportion.js";
import { judgeRatios } from "./judge-ratio.js";
import { judgeTotals } from "./judge-totals.js";
import { judgeUpper } from "./judge-upper.js";
import { judgeWorded } from "./judge-worded.js";
import { conclusionsIn } from "./over-claims.js";
import { recalled } from "./recalled.js";
import { scopeOf } from "./scope.js";
import type { PrintedNumber } from "../text/token.js";
import { silentZero } from "./silent-zero.js";
import type { Story } from "./story.js";
import { cohortsOf, impossibleUnits, judgeUnit } from "./units-of-text.js";
import { casesToFlip, clusteredIntervals, conventionLine } from "./would-change.js";

export interface TextContext extends TextReading {
  readonly cohorts: ReturnType<typeof cohortsOf>;
  readonly earlier: readonly Count[];
  readonly story: Story;
  /** Denominators are left out here and there: none of another sentence is certain. */
  readonly uncertain: boolean;
  /** The two counts of the latest sentence that compared some. */
  readonly pair: readonly Count[];
}

/** A claim whose place is still in tokens. */
interface Draft extends Judged, Place {
  unit: Light;
  conclusion: Light;
  unitBecause: string;
  conclusionBecause: string;
  readonly wouldChange: readonly string[];
}

/** Judges every claim of one sentence. */
export function judgeSentence(text: string, read: LinkedSentence, context: TextContext): Claim[] {
  const linked = recalled(read, context.story);
  const { facts, tokens } = linked.reading;
  const conclusions = conclusionsIn(tokens);
  const zero = silentZero(linked, context.story);
  if (facts.length === 0 && conclusions.length === 0 && !zero) return [];
  const model = modelOf(linked);
  const drafts: Draft[] = [
    ...linked.proportions.map((group) => proportionDraft(group, context, model)),
    ...linked.estimates.map((group) =>
      draft(placeOf(group.estimate, group.interval), judgeEstimate(linked, group, context.tables, model)),
    ),
    ...linked.loose.map((interval) => draft(interval, judgeLoose(linked, interval))),
    ...linked.pValues.map((p) => draft(p, judgePClaim(linked, p, context.methods, context.pair), pChanges(linked, p))),
    ...judgeTotals(linked.reading, context.story).map((total) =>
      draft(total, {
        kind: "total",
        printed: {},
        recomputed: { sum: total.parts.reduce((a, b) => a + b, 0) },
        arithmetic: total.light,
        because: total.because,
        reproducedBy: total.reproducedBy,
      }),
    ),
  ];
  for (const { from, to, value, light, because, reproducedBy } of [
    ...judgeRatios(linked.reading),
    ...judgeWorded(linked.reading),
    ...judgeUpper(linked),
  ])
    drafts.push(
      draft(
        { from, to },
        { kind: "ratio", printed: {}, recomputed: { ratio: value }, arithmetic: light, because, reproducedBy },
      ),
    );
  if (zero) drafts.push(draft(zero, zero));
  const units = impossibleUnits(linked);
  if (units)
    drafts.push({
      ...draft(units, {
        kind: "denominator",
        printed: {},
        recomputed: {},
        arithmetic: "cannot be checked",
        because: "",
        reproducedBy: [],
      }),
      unit: "fails",
      unitBecause: units.because,
    });
  conclude(linked, drafts, conclusions, context);
  return drafts.map((item) => claimOf(text, linked, item));
}

const draft = (place: Place, judged: Judged, wouldChange: readonly string[] = []): Draft => ({
  kind: judged.kind, printed: judged.printed, recomputed: judged.recomputed, arithmetic: judged.arithmetic, because: judged.because, reproducedBy: judged.reproducedBy,
  from: place.from, to: place.to, unit: "cannot be checked", conclusion: "cannot be checked", unitBecause: "", conclusionBecause: "", wouldChange,
}); // prettier-ignore

const placeOf = (...places: readonly (Place | null)[]): Place => {
  const found = places.filter((place) => place !== null);
  return { from: Math.min(...found.map(({ from }) => from)), to: Math.max(...found.map(({ to }) => to)) };
};

function proportionDraft(group: ProportionGroup, context: TextContext, model: string | null): Draft {
  const place = placeOf(group.count, group.percent, group.told, group.limit, ...group.intervals);
  const { count } = group;
  const limb = count?.unit === "fracture" || count?.unit === "limb";
  const cohort = limb ? context.cohorts.find(({ limbs }) => limbs === count.trials) : undefined;
  const changes = count && cohort && count.successes <= count.trials ? clusteredIntervals(count, cohort) : [];
  const unit = judgeUnit(group, context.cohorts);
  return Object.assign(draft(place, judgeProportion(group, model, context.uncertain), changes), {
    unit: unit.light,
    unitBecause: unit.because,
  });
}

function pChanges(linked: LinkedSentence, p: LinkedSentence["pValues"][number]): string[] {
  const { counts, paired } = scopeOf(linked, p);
  if (counts.length !== 2 || paired) return [];
  const pair = counts as [Count, Count];
  const flip = casesToFlip(pair, (first, second) => fisherExact({ first, second }).pointProbability);
  return [conventionLine(conventions({ first: pair[0], second: pair[1] })), ...(flip ? [flip] : [])];
}

const models = new Set(
  "cluster clustered cluster-robust robust bootstrap bootstrapped bayesian credible gee mixed adjusted profile multilevel per-child kaplan-meier weighted logit".split(
    " ",
  ),
);

/** Why an interval cannot be recomputed from the counts, when the sentence names a model; null otherwise. */
function modelOf({ reading }: LinkedSentence): string | null {
  const named = reading.tokens.find(({ text }) => models.has(text));
  return named
    ? `The sentence names a model ("${named.text}"), so the interval cannot be recomputed from the counts.`
    : null;
}

/** Sets each conclusion against the numbers and hangs it on the claim it is drawn from. */
function conclude(
  linked: LinkedSentence,
  drafts: Draft[],
  conclusions: ReturnType<typeof conclusionsIn>,
  context: TextContext,
): void {
  for (const conclusion of conclusions) {
    const verdict = judgeConclusion(linked, conclusion, context.earlier, context.story);
    if (!verdict) continue;
    const bearer = bearerOf(drafts, conclusion);
    if (bearer) {
      const fails = verdict.light === "fails" || bearer.conclusion === "fails";
      const index = drafts.indexOf(bearer);
      drafts[index] = {
        ...bearer,
        ...(verdict.light === "fails" ? placeOf(bearer, conclusion) : {}),
        kind: fails && bearer.arithmetic !== "fails" ? "over-claim" : bearer.kind,
        conclusion: fails ? "fails" : "holds",
        conclusionBecause: [bearer.conclusionBecause, verdict.because].filter(Boolean).join(" "),
      };
    } else if (verdict.light === "fails") {
      const judged: Judged = {
        kind: "over-claim",
        printed: {},
        recomputed: {},
        arithmetic: "cannot be checked",
        because: "",
        reproducedBy: [],
      };
      drafts.push({ ...draft(conclusion, judged), conclusion: "fails", conclusionBecause: verdict.because });
    }
  }
}

const comparing = new Set(["equality", "superiority", "trend", "significant", "not significant", "cause"]);

/** Comparisons hang on a p value or an effect, absolutes on a count; else on the nearest claim. */
function bearerOf(
  drafts: readonly Draft[],
  { type, from }: { readonly type: string; readonly from: number },
): Draft | undefined {
  const wanted = drafts.filter(
    ({ kind }) =>
      [
        "p value",
        "p against interval",
        "test statistic",
        "difference",
        "odds ratio",
        "risk ratio",
        "over-claim",
        "ratio",
      ].includes(kind) === comparing.has(type),
  );
  const candidates = wanted.length > 0 ? wanted : drafts;
  return candidates.toSorted((a, b) => Math.abs(a.from - from) - Math.abs(b.from - from))[0];
}

function claimOf(text: string, { reading }: LinkedSentence, item: Draft): Claim {
  const { from, to, unitBecause, conclusionBecause, because } = item;
  const start = reading.tokens[from]!.start;
  const end = reading.tokens[closed(reading.tokens, from, to) - 1]!.end;
  return {
    kind: item.kind,
    text: text.slice(start, end),
    start,
    end,
    printed: digitsOnly(item.printed),
    recomputed: item.recomputed,
    arithmetic: item.arithmetic,
    unit: item.unit,
    conclusion: item.conclusion,
    because:
      unitBecause || conclusionBecause ? [because, unitBecause, conclusionBecause].filter(Boolean).join(" ") : because,
    reproducedBy: item.reproducedBy,
    wouldChange: item.wouldChange,
  };
}

/** Value and decimals alone; the unit mark served the judging. */
function digitsOnly(printed: Claim["printed"]): Claim["printed"] {
  const plain: Record<string, PrintedNumber> = {};
  for (const name in printed) plain[name] = { value: printed[name]!.value, decimals: printed[name]!.decimals };
  return plain;
}

/** One past the bracket that closes right after, when it was opened inside. */
function closed(tokens: LinkedSentence["reading"]["tokens"], from: number, to: number): number {
  const count = (mark: string): number => tokens.slice(from, to).filter(({ text }) => text === mark).length;
  const next = tokens[to]?.text;
  const open = next === ")" ? count("(") - count(")") : next === "]" ? count("[") - count("]") : 0;
  return open > 0 ? to + 1 : to;
}
