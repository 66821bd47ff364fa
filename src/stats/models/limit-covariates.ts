import { requireOptions } from "../guards.js";

export interface CovariateLimit {
  readonly method: "events per covariate";
  /** The rarer of successes and failures. */
  readonly rarer: number;
  readonly eventsPerCovariate: number;
  /** Covariates that the events allow. */
  readonly allowed: number;
}

/**
 * How many covariates the events of a series allow. The usual demand is 10 of the rarer outcome for each (Peduzzi);
 * 5 has been shown to do in many settings (Vittinghoff and McCulloch) and is the default here.
 *
 * @param counts.successes integer, 0 to `cases`
 * @param counts.cases integer, at least 0
 * @param options.eventsPerCovariate above 0; default 5
 * @throws RangeError when a count or the option is out of range
 * @see Peduzzi et al. 1996, J Clin Epidemiol 49:1373-1379; Vittinghoff and McCulloch 2007, Am J Epidemiol 165:710-718
 * @example limitCovariates({ successes: 42, cases: 51 }).allowed // => 1
 */
export function limitCovariates(
  counts: { readonly successes: number; readonly cases: number },
  options: { readonly eventsPerCovariate?: number } = {},
): CovariateLimit {
  requireOptions("limitCovariates", options, ["eventsPerCovariate"]);
  const { eventsPerCovariate = 5 } = options;
  requireEventsPerCovariate("limitCovariates", eventsPerCovariate);
  const { successes, cases } = counts;
  if (!(Number.isSafeInteger(cases) && Number.isSafeInteger(successes) && successes >= 0 && successes <= cases))
    throw new RangeError(`limitCovariates: successes must be an integer from 0 to cases (${cases}), got ${successes}`);
  const rarer = Math.min(successes, cases - successes);
  return { method: "events per covariate", rarer, eventsPerCovariate, allowed: Math.floor(rarer / eventsPerCovariate) };
}

export function requireEventsPerCovariate(caller: string, eventsPerCovariate: number): void {
  if (!(eventsPerCovariate > 0 && eventsPerCovariate < Infinity))
    throw new RangeError(`${caller}: eventsPerCovariate must be positive and finite, got ${eventsPerCovariate}`);
}
