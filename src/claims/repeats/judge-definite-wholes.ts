import type { Claim } from "../claim.js";
import type { LinkedSentence } from "../reading/link.js";
import { numberedIn } from "../judging/total.js";
import { repeatClaim } from "./repeat-claim.js";

/** Nouns of a whole cohort: one word for each kind. Boys and girls are parts of one. */
const nouns: Record<string, string> = {};
for (const [kind, words] of Object.entries({
  children:
    "child children patient patients adolescent adolescents subject subjects participant participants individuals teenagers",
  fractures: "fracture fractures",
  limbs: "limb limbs arm arms",
  shoulders: "shoulder shoulders humerus humeri",
  elbows: "elbow elbows",
  wrists: "wrist wrists",
  forearms: "forearm forearms",
  hips: "hip hips",
  knees: "knee knees",
  ankles: "ankle ankles",
  feet: "foot feet",
}))
  // prettier-ignore
  for (const word of words.split(" ")) nouns[word] = kind;

const enrolling = new Set(
  "treated included enrolled reviewed studied comprised consisted identified randomised randomized operated followed recruited had underwent sustained were analysed analyzed".split(
    " ",
  ),
);
const planning = new Set("power sample needed required calculated per estimated would planned target".split(" "));
const elsewhere = new Set(
  "previous previously earlier literature reported series studies et al control controls comparison combined together authors published registry population respectively".split(
    " ",
  ),
);
const leaving =
  /^(exclu|lost|withdr|died|declin|refus|missing|ineligib|mov(ed|ing)|unavail|available|eligible|attend|complet|remain|respon|return|follow|drop|left|except|without|consent)/;
const definite = new Set(["the", "these", "all", "our", "those"]);
const unrestricted = new Set("were was had have united healed did . , ) ; :".split(" "));

/** Beyond this many numbers some two of them make any other. */
const mostNumbers = 60;

interface Stated {
  readonly value: number;
  readonly noun: string;
}

/**
 * A cohort counted twice: "the 52 fractures" after 51 were treated. It fails where more are counted than there ever
 * were, or slightly fewer and nobody left; a number printed before, or made of two printed before, is left alone.
 */
export function judgeDefiniteWholes(text: string, sentences: readonly LinkedSentence[]): Claim[] {
  const cohorts: Stated[] = [];
  const numbers: number[] = [];
  let leavers = false;
  return sentences.flatMap((sentence): Claim[] => {
    const { reading } = sentence;
    const words = reading.tokens.map(({ text: word }) => word);
    leavers ||= words.some((word) => leaving.test(word));
    const claims: Claim[] = [];
    const foreign = reading.row || words.some((word) => elsewhere.has(word) || planning.has(word));
    for (const fact of numberedIn(reading)) {
      const at = fact.to - 1;
      const value = fact.kind === "count" ? fact.trials : fact.value;
      const noun = Object.hasOwn(nouns, words[fact.to] ?? "") ? nouns[words[fact.to]!]! : null;
      const known = noun === null ? [] : cohorts.filter((one) => one.noun === noun).map((one) => one.value);
      const explained = numbers.length > mostNumbers || numbers.includes(value) || composed(value, numbers);
      if (!foreign && known.length > 0 && !explained) {
        const most = Math.max(...known);
        const named = definite.has(words[at - 1] ?? "") && unrestricted.has(words[fact.to + 1] ?? ".");
        const more = value > most && (named || fact.kind === "count");
        const fewer = value < most && value >= 0.9 * most && named && !leavers;
        if (more || fewer) claims.push(claimOf(text, reading, fact, value, most, words[fact.to]!));
      }
      if (!foreign && noun !== null && fact.kind === "whole" && words.some((word) => enrolling.has(word)))
        cohorts.push({ value, noun });
    }
    if (numbers.length > mostNumbers) return claims;
    numbers.push(...reading.tokens.flatMap(({ number }) => (number && number.decimals === 0 ? [number.value] : [])));
    return claims;
  });
}

/** The sum or difference of two numbers printed before. */
function composed(value: number, numbers: readonly number[]): boolean {
  const all = new Set(numbers);
  const pair = numbers.some((a) => all.has(value - a) || all.has(value + a));
  return pair || numbers.some((a) => numbers.some((b) => all.has(value - a - b)));
}

function claimOf(
  text: string, { tokens }: LinkedSentence["reading"], { from, to }: { readonly from: number; readonly to: number }, value: number, before: number, noun: string,
): Claim {
  const because = `${before} ${noun} were counted before, ${value} here. Which number is right, or who came or left in between?`;
  const printed = { value: { value, decimals: 0 } };
  return repeatClaim(text, { start: tokens[from]!.start, end: tokens[to]!.end }, printed, { value: before }, because);
} // prettier-ignore
