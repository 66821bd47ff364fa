import type { NotEstimable } from "../types.js";
import type { TwoGroups } from "./groups.js";

/** First proportion over second: Infinity when only the second is 0, undefined when both are. */
export function ratioOfProportions({ first, second }: TwoGroups): { readonly estimate: number } | NotEstimable {
  if (first.successes === 0 && second.successes === 0)
    return { estimate: null, because: "neither group had a success, so the risk ratio is 0 over 0" };
  return { estimate: first.successes / first.trials / (second.successes / second.trials) };
}
