import type { LinkedSentence, ProportionGroup } from "../reading/link.js";
import type { Finding } from "./finding.js";
import { roundingOf } from "./rounding.js";

/** A sentence that names one cohort in two units: 51 fractures in 48 children. */
interface TwoUnits {
  readonly people: number;
  readonly limbs: number;
}

const isLimb = (unit: string | null): boolean => unit === "fracture" || unit === "limb";

/** Cohorts that the text counts both by child and by limb. */
export function cohortsOf(sentences: readonly LinkedSentence[]): TwoUnits[] {
  return sentences.flatMap(({ reading }) => {
    // "28 patients (82%)" is a part of the cohort.
    const shares = new Set(reading.facts.flatMap((fact) => (fact.kind === "percent" ? [fact.from] : [])));
    const isPart = (to: number): boolean => [1, 2, 3].some((far) => shares.has(to + far));
    const wholes = reading.facts.filter((fact) => fact.kind === "whole").filter(({ to }) => !isPart(to));
    const people = wholes.filter(({ unit }) => unit === "child");
    const limbs = wholes.filter(({ unit }) => isLimb(unit));
    if (people.length !== 1 || limbs.length !== 1 || people[0]!.value === limbs[0]!.value) return [];
    return [{ people: people[0]!.value, limbs: limbs[0]!.value }];
  });
}

/** The unit light of a count: does its noun belong to its denominator, by the text's own words? */
export function judgeUnit(group: ProportionGroup, cohorts: readonly TwoUnits[]): Finding {
  const { count, percent } = group;
  const unit = count?.unit ?? group.told?.unit ?? percent?.unit ?? null;
  const none: Finding = { light: "cannot be checked", because: "", reproducedBy: [] };
  if (
    count?.unit &&
    percent?.unit &&
    isLimb(count.unit) !== isLimb(percent.unit) &&
    known(count.unit) &&
    known(percent.unit)
  )
    return {
      ...none,
      light: "fails",
      because: `The count is of ${plural(count.unit)}, the percentage of ${plural(percent.unit)}: which unit is meant?`,
    };
  if (!count || !unit || !known(unit)) return unit ? { ...none, light: "holds" } : none;
  for (const { people, limbs } of cohorts) {
    // The reader chose the whole: where the right one gives the same percentage, it is meant.
    const right = unit === "child" ? people : limbs;
    const chosen = group.wholeFrom !== "print" && percent !== null && count.successes <= right;
    if (chosen && roundingOf([[(100 * count.successes) / right, percent.number]])) continue;
    if (unit === "child" && count.trials === limbs)
      return {
        ...none,
        light: "fails",
        because: `${limbs} is the number of limbs; the children number ${people}. Is the denominator limbs or children?`,
      };
    if (isLimb(unit) && count.trials === people)
      return {
        ...none,
        light: "fails",
        because: `${people} is the number of children; the limbs number ${limbs}. Is the denominator children or limbs?`,
      };
  }
  return { ...none, light: "holds" };
}

const known = (unit: string): boolean => unit === "child" || isLimb(unit);
const plural = (unit: string): string => (unit === "child" ? "children" : `${unit}s`);

const enrolling = new Set(
  "treated included enrolled studied reviewed analysed analyzed comprised identified followed".split(" "),
);

/** Fewer fractures than the children who had them. */
export function impossibleUnits({
  reading,
}: LinkedSentence): { readonly from: number; readonly to: number; readonly because: string } | null {
  const wholes = reading.facts.filter((fact) => fact.kind === "whole");
  const [first, second] = wholes;
  if (
    !first ||
    !second ||
    wholes.length !== 2 ||
    !isLimb(first.unit) ||
    second.unit !== "child" ||
    first.value >= second.value
  )
    return null;
  const between = reading.tokens.slice(first.to, second.from).map(({ text }) => text);
  if (!between.includes("in") || between.length > 4 || !reading.tokens.some(({ text }) => enrolling.has(text)))
    return null;
  return {
    from: first.from,
    to: second.to,
    because: `${first.value} fractures cannot be spread over ${second.value} children who all had one. Which number is right?`,
  };
}
