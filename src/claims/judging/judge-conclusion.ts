import type { Count } from "../../stats/types.js";
import type { LinkedSentence } from "../reading/link.js";
import { evidenceIn } from "./evidence.js";
import { listed, percentText, pText } from "./number-text.js";
import type { Conclusion } from "./over-claims.js";
import { proportionCandidates } from "./proportion-methods.js";
import type { Story } from "./story.js";

/** What the numbers say about a conclusion drawn from them; null when there is nothing to set it against. */
export interface ConclusionVerdict {
  readonly light: "holds" | "fails";
  readonly because: string;
}

/** Above this upper limit a failure or harm is not excluded: 1 case in 100. */
const negligible = 0.01;

/** Words of a text that planned to show equality, and so may. */
const planned = ["margin", "margins", "non-inferiority", "noninferiority", "equivalence"];

/**
 * Judges a conclusion by the numbers of its sentence, or of the sentences before.
 * @param earlier counts of the text before, the latest last
 * @param story what the text before has said
 */
export function judgeConclusion(
  linked: LinkedSentence,
  conclusion: Conclusion,
  earlier: readonly Count[],
  story: Story,
): ConclusionVerdict | null {
  const { type, phrase } = conclusion;
  if (type === "absolute" || type === "safety") return absolute(linked, phrase, earlier, type === "safety");
  if (type === "cause" && causal.has(phrase) && concluding(linked) && isObservational(story))
    return fails(
      `"${phrase}": by the text's own words nobody was allocated to a treatment, so the numbers show an association, not a cause. Please soften the conclusion.`,
    );
  const own = evidenceIn(linked);
  const follows = story.latestEvidence === false && ["cause", "superiority"].includes(type);
  const told = own === null && linked.proportions.length === 0 && (concluding(linked) || follows);
  // A closing sentence rests on the comparisons before it: only where none of them excludes no effect is it clear.
  const evidence = told && story.evidence.length > 0 && !story.evidence.includes(true) ? false : own;
  if (type === "trend")
    return evidence === false
      ? fails(
          `"${phrase}" reads a p value above 0.05 as an effect: please give the estimate with its interval instead.`,
        )
      : null;
  if (type === "significant")
    return evidence === false
      ? fails(`"${phrase}" does not go with the p value or interval printed. Which of the two is right?`)
      : evidence === true
        ? holds()
        : null;
  if (type === "not significant")
    return evidence === true && linked.pValues.length <= 1
      ? fails("The numbers printed are significant at 0.05, the words say they are not. Which is right?")
      : evidence === false
        ? holds()
        : null;
  if (type === "equality")
    return evidence === false && planned.some((word) => story.words.has(word))
      ? null
      : evidence === false
        ? fails(
            `"${phrase}": the numbers are too few to exclude a difference${allowed(linked)}; absence of evidence is not equality.`,
          )
        : null;
  if (type === "cause" && !told && linked.pValues.length === 0 && !linked.estimates.some(({ interval }) => interval))
    return null;
  return evidence === false
    ? fails(
        `"${phrase}" claims more than the numbers show: no difference at all is compatible with them${allowed(linked)}.`,
      )
    : null;
}

/** Verbs that leave no reading but cause and effect. */
const causal = new Set(["prevents", "prevented", "caused", "causes"]);
const observational = ["retrospective", "retrospectively", "non-randomised", "non-randomized", "nonrandomised", "nonrandomized", "observational", "uncontrolled"]; // prettier-ignore
const allocated = ["randomised", "randomized", "randomisation", "randomization", "randomly", "allocated"];

const isObservational = ({ words }: Story): boolean =>
  observational.some((word) => words.has(word)) && !allocated.some((word) => words.has(word));

const fails = (because: string): ConclusionVerdict => ({ light: "fails", because });
const holds = (): ConclusionVerdict => ({ light: "holds", because: "" });

const closing = new Set(
  "conclude concluded conclusion conclusions therefore thus hence consequently confirm confirms show shows demonstrate demonstrates prove proves".split(
    " ",
  ),
);

/** "We conclude that", "These results show that". */
const concluding = ({ reading }: LinkedSentence): boolean => reading.tokens.some(({ text }) => closing.has(text));

function allowed(linked: LinkedSentence): string {
  const effect = linked.estimates.find(({ estimate, interval }) => estimate.kind === "effect" && interval);
  if (effect?.interval) return ` (interval ${effect.interval.low.value} to ${effect.interval.high.value})`;
  const p = linked.pValues.find(({ number }) => number);
  return p?.number ? ` (p ${p.relation} ${pText(p.number.value)})` : "";
}

/** "safe" and "never": the share of failures that the counts leave possible. */
function absolute(
  linked: LinkedSentence,
  phrase: string,
  earlier: readonly Count[],
  safety: boolean,
): ConclusionVerdict | null {
  const own = linked.proportions.flatMap(({ count }) => (count && count.successes <= count.trials ? [count] : []));
  const candidates: readonly Count[] = own.length > 0 ? own : earlier;
  const extremes = candidates.filter(({ successes, trials }) => successes === 0 || successes === trials);
  const count = (safety || own.length > 0 ? extremes.at(-1) : undefined) ?? candidates.at(-1);
  if (!count) return null;
  const { successes, trials } = count;
  const none = successes === 0 || (safety && successes < trials / 2);
  const limits = proportionCandidates(successes, trials, 0.95).filter(
    ({ name }) => name === "Wilson" || name.startsWith("exact (C"),
  );
  const possible = limits.map(({ interval }) => (none ? interval.high : 1 - interval.low));
  if (Math.max(...possible) <= negligible) return holds();
  const texts = possible.map((value) => percentText(value, 0));
  const what = none ? "still allows a rate" : "still allows a failure rate";
  return fails(
    `"${phrase}" is not supported: ${successes} of ${trials} ${what} of up to ${listed([`${texts[0]!} (Wilson)`, `${texts[1]!} (exact)`])}. Please give that limit and soften the conclusion.`,
  );
}
