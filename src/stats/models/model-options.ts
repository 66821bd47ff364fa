import { requireLevel, requireOptions } from "../guards.js";
import type { NotEstimable } from "../types.js";
import { limitCovariates, requireEventsPerCovariate } from "./limit-covariates.js";
import { logisticDesign, type Design, type LogisticData } from "./logistic-data.js";

export interface ModelOptions {
  /** Coverage of all limits; default 0.95. */
  readonly level?: number;
  /** Of the rarer outcome, for each covariate; default 5. See `limitCovariates`. */
  readonly eventsPerCovariate?: number;
}

/** Options with their defaults, checked; and the design, or why there is none. */
export function checkedModel(
  caller: string,
  data: LogisticData,
  options: ModelOptions,
): { readonly level: number; readonly design: Design | NotEstimable } {
  requireOptions(caller, options, ["level", "eventsPerCovariate"]);
  const { level = 0.95, eventsPerCovariate = 5 } = options;
  requireLevel(caller, level);
  requireEventsPerCovariate(caller, eventsPerCovariate);
  const design = logisticDesign(caller, data);
  if ("estimate" in design) return { level, design };
  const { rarer, allowed } = limitCovariates({ successes: design.events, cases: design.cases }, { eventsPerCovariate });
  const wanted = design.columns - 1;
  if (wanted <= allowed) return { level, design };
  const need = Math.ceil(wanted * eventsPerCovariate);
  const because =
    `${wanted} covariate${wanted === 1 ? "" : "s"} need${wanted === 1 ? "s" : ""} at least ${need} of the rarer outcome ` +
    `(${eventsPerCovariate} for each), there are ${rarer}`;
  return { level, design: { estimate: null, because } };
}
