import type { Draft } from "../doubts.js";

/** Steps of a case in the order in which they must happen. */
export const steps = ["birth", "injury", "treatment", "review"] as const;
export type Step = (typeof steps)[number];

const words: Readonly<Record<Step, RegExp>> = {
  birth: /\b(dob|d\.?o\.?b|birth\w*|born|geburt\w*|naissance|nacimiento)\b/i,
  injury: /\b(inj\w*|accident|trauma|doi|fractured?|fall|unfall\w*)\b/i,
  treatment: /\b(treat\w*|op|operat\w*|surg\w*|procedure|reduc\w*|dos|theatre|admi\w*|behandl\w*)\b/i,
  review: /\b(review\w*|follow\w*|last|f\/?u|seen|visit|clinic|removal|discharge\w*|nachunter\w*)\b/i,
};

/** First column of dates for each step of a case, by the words of its heading; birth also among the identifiers. */
export function dateColumns({ names, roles }: Draft): ReadonlyMap<Step, number> {
  const found = new Map<Step, number>();
  for (const step of ["birth", "review", "injury", "treatment"] as const) {
    const wanted = step === "birth" ? ["date", "identifier"] : ["date"];
    const k = names.findIndex(
      (name, i) => wanted.includes(roles[i]!) && words[step].test(name) && ![...found.values()].includes(i),
    );
    if (k >= 0) found.set(step, k);
  }
  return found;
}
