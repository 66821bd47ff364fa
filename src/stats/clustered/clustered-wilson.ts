import { normalUpperQuantile } from "../../numeric/normal.js";
import { wilsonLimits } from "../wilson-limits.js";
import {
  clusteredLevel,
  totalsOf,
  type Child,
  type ClusteredInterval,
  type ClusteredWithoutInterval,
} from "./children.js";
import { correlationWithinChild } from "./correlation-within-child.js";

/** The correlation used, and where it comes from: an estimate below 0 is raised to 0, which never narrows the interval. */
export interface UsedCorrelation {
  readonly value: number;
  readonly origin: "stated" | "estimated" | "estimated below 0, raised to 0";
}

export type ClusteredWilsonResult =
  | (ClusteredInterval & { readonly method: "wilson, effective count"; readonly correlation: UsedCorrelation })
  | (ClusteredWithoutInterval & { readonly method: "wilson, effective count"; readonly correlation: null });

/**
 * Wilson's interval for limbs of which some share a child: the count is divided by the design effect
 * 1 + (sum of squared limbs a child / limbs - 1) x correlation.
 *
 * @param children for each child, its limbs
 * @param options.correlation within a child, in [0, 1]; estimated by analysis of variance when left out
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when there is no child, a child without limb, or an option is out of range
 * @see Saha, Miller and Wang 2016, Int J Biostat 12(2); design effect of unequal clusters: Kish 1965, Survey sampling,
 * section 5.4
 * @example clusteredWilson([[true, true], [true], [false]], { correlation: 1 }).effectiveTrials // => 2.6666667
 */
export function clusteredWilson(
  children: readonly Child[],
  options: { readonly correlation?: number; readonly level?: number } = {},
): ClusteredWilsonResult {
  const level = clusteredLevel("clusteredWilson", children, options, ["correlation", "level"]);
  const { correlation: stated } = options;
  if (stated !== undefined && !(stated >= 0 && stated <= 1))
    throw new RangeError(`clusteredWilson: correlation must lie in [0, 1], got ${stated}`);
  const { squares, ...counts } = totalsOf(children);
  const about = { method: "wilson, effective count", ...counts, level } as const;
  const correlation = stated === undefined ? estimated(children) : ({ value: stated, origin: "stated" } as const);
  if ("because" in correlation)
    return {
      ...about,
      correlation: null,
      designEffect: null,
      effectiveTrials: null,
      interval: null,
      because: `the correlation within a child cannot be estimated: ${correlation.because}; state one`,
    };

  const designEffect = 1 + (squares / counts.trials - 1) * correlation.value;
  const effectiveTrials = counts.trials / designEffect;
  // No failure must stay no failure after the division.
  const effective = counts.successes === counts.trials ? effectiveTrials : counts.successes / designEffect;
  const interval = wilsonLimits(effective, effectiveTrials, normalUpperQuantile((1 - level) / 2));
  return { ...about, correlation, designEffect, effectiveTrials, interval };
}

function estimated(children: readonly Child[]): UsedCorrelation | { readonly because: string } {
  const correlation = correlationWithinChild(children);
  if (correlation.estimate === null) return { because: correlation.because };
  return correlation.estimate < 0
    ? { value: 0, origin: "estimated below 0, raised to 0" }
    : { value: correlation.estimate, origin: "estimated" };
}
