import type { Claim } from "../claim.js";
import type { LinkedSentence } from "../reading/link.js";
import { asPrinted, fixed } from "../judging/number-text.js";
import type { PrintedNumber } from "../text/token.js";
import { repeatClaim } from "./repeat-claim.js";

/** Outcomes by the start of their words. */
const outcomes = ["success", "union", "unit", "heal", "complication", "infection", "failure", "fail", "surviv", "agree", "satisf", "recurren", "refract", "nonunion", "conversion", "reoperation", "redisloc", "palsy"]; // prettier-ignore
const recalling = new Set("conclude concluded conclusion conclusions summary our overall thus therefore".split(" "));
const hedges = new Set("about approximately around nearly almost over under than least most up up-to roughly some between per ten".split(" ")); // prettier-ignore
const elsewhere = new Set(
  "previous previously earlier literature reported studies et al others authors published registry historical compared versus whereas range ranged ranging from power sample level confidence if would had subgroup grade grades boys girls men women male female months weeks years age aged".split(
    " ",
  ),
);

interface Share {
  readonly value: number;
  readonly outcomes: ReadonlySet<string>;
  /** Treatments that its sentence names. */
  readonly groups: readonly string[];
}

/**
 * A percentage that a conclusion recalls, "the success rate of 86%", against those of the text before: it fails where
 * the outcome has one rate there, near it, and no number before gives the one recalled.
 */
export function judgeRecalledShares(text: string, sentences: readonly LinkedSentence[]): Claim[] {
  const before: Share[] = [];
  return sentences.flatMap((sentence): Claim[] => {
    const claims = recalls(sentence) ? odd(text, sentence, before) : [];
    before.push(...sharesOf(sentence));
    return claims;
  });
}

/** One bare percentage in a sentence that looks back on the whole series. */
function recalls({ reading, proportions, estimates, pValues }: LinkedSentence): boolean {
  const words = reading.tokens.map(({ text }) => text);
  const [group] = proportions;
  const bare = proportions.length === 1 && group!.count === null && group!.percent !== null && group!.intervals.length === 0;
  if (!bare || reading.row || estimates.length + pValues.length > 0 || group!.percent!.change || group!.percent!.trials !== null) return false;
  if (!words.some((word) => recalling.has(word)) || words.some((word) => elsewhere.has(word))) return false;
  return !words.slice(Math.max(0, group!.percent!.from - 4), group!.percent!.from).some((word) => hedges.has(word));
} // prettier-ignore

function odd(text: string, { reading, proportions }: LinkedSentence, before: readonly Share[]): Claim[] {
  const { number, from, to } = proportions[0]!.percent!;
  const named = outcomesIn(reading);
  const same = before.filter((share) => [...share.outcomes].some((outcome) => named.has(outcome)));
  const values = [...new Set(same.map(({ value }) => fixed(value, number.decimals)))];
  const groups = groupsIn(reading);
  // Rates of several groups stand before: the one recalled may be that of another.
  if (groups.length > 0 && before.some((share) => share.groups.some((group) => !groups.includes(group)))) return [];
  if (values.length !== 1 || before.some(({ value }) => gives(value, number))) return [];
  if (Math.abs(same[0]!.value - number.value) > 15 || before.length > 200) return [];
  const because = `${asPrinted(number)}% is told here, ${values[0]}% before for the same outcome. Which number is right?`;
  const place = { start: reading.tokens[from]!.start, end: reading.tokens[to - 1]!.end };
  return [repeatClaim(text, place, { percent: number }, { percent: same[0]!.value }, because)];
}

/** A rate, or its complement, that prints like this, cut off or rounded twice. */
const gives = (value: number, { value: printed, decimals }: PrintedNumber): boolean =>
  [value, 100 - value].some((rate) => Math.abs(rate - printed) <= 1.01 * 10 ** -decimals);

function sharesOf({ reading, proportions }: LinkedSentence): Share[] {
  const named = outcomesIn(reading);
  const groups = groupsIn(reading);
  return proportions.flatMap(({ count, percent }): Share[] => {
    const value = count && count.trials > 0 ? (100 * count.successes) / count.trials : percent?.number.value;
    return value === undefined ? [] : [{ value, outcomes: named, groups }];
  });
}

const treatments = new Set(
  "closed open wired unwired wires cast sling plate nail operative nonoperative conservative".split(" "),
);
const groupsIn = ({ tokens }: LinkedSentence["reading"]): string[] =>
  tokens.flatMap(({ text }) => (treatments.has(text) ? [text] : []));

const outcomesIn = ({ tokens }: LinkedSentence["reading"]): Set<string> =>
  new Set(
    tokens
      .flatMap(({ kind, text }) => (kind !== "word" ? [] : outcomes.filter((outcome) => text.startsWith(outcome))))
      .map(plain),
  );

/** "union" and "united" are one outcome, "fail" and "failure" too. */
const plain = (outcome: string): string => (outcome === "unit" ? "union" : outcome === "failure" ? "fail" : outcome);
