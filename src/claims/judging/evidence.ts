import type { PFact } from "../reading/facts.js";
import type { LinkedSentence } from "../reading/link.js";
import { isRatio } from "./judge-own-interval.js";
import { conventions } from "./p-conventions.js";
import { countsFor } from "./scope.js";

/** True when the sentence's numbers exclude no effect, false when they do not, null when it has none. */
export function evidenceIn(linked: LinkedSentence): boolean | null {
  const verdicts = linked.pValues.map(below).filter((verdict) => verdict !== null);
  if (verdicts.length > 0) return verdicts.some(Boolean);
  for (const { estimate, interval } of linked.estimates) {
    if (estimate.kind !== "effect" || !interval) continue;
    const none = isRatio(estimate) ? 1 : 0;
    return interval.low.value > none || interval.high.value < none;
  }
  const counts = countsFor(linked, Infinity);
  if (counts.length !== 2) return null;
  return conventions({ first: counts[0]!, second: counts[1]! }).some(
    ({ p, family }) => p < 0.05 && family !== "fisher one-sided",
  );
}

function below({ relation, number }: PFact): boolean | null {
  if (relation === "not significant") return false;
  if (!number) return null;
  if (relation === "<" || relation === "≤") return number.value <= 0.05 ? true : null;
  if (relation === ">" || relation === "≥") return number.value >= 0.05 ? false : null;
  return number.value < 0.05;
}
