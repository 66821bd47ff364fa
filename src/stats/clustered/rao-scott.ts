import { normalUpperQuantile } from "../../numeric/normal.js";
import { wilsonLimits } from "../wilson-limits.js";
import {
  clusteredLevel,
  successesOf,
  totalsOf,
  type Child,
  type ClusteredInterval,
  type ClusteredWithoutInterval,
} from "./children.js";

export type RaoScottResult = { readonly method: "rao-scott, wilson" } & (ClusteredInterval | ClusteredWithoutInterval);

/**
 * Wilson's interval after Rao and Scott's correction: the design effect is the variance of the ratio of successes to
 * limbs between children over the binomial variance. It states no model for the limbs of one child.
 *
 * @param children for each child, its limbs
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when there is no child, a child without limb, or the level is out of range
 * @see Rao and Scott 1992, Biometrics 48:577-585 (effective count); Wilson's limits at that count as in Saha, Miller and
 * Wang 2016, Int J Biostat 12(2)
 * @example raoScott([[true, true], [true, true], [false, false], [true]]).designEffect // => 2.5904762
 */
export function raoScott(children: readonly Child[], options: { readonly level?: number } = {}): RaoScottResult {
  const level = clusteredLevel("raoScott", children, options);
  const { squares: _squares, ...counts } = totalsOf(children);
  const { trials, estimate } = counts;
  const about = { method: "rao-scott, wilson", ...counts, level } as const;
  const because = whyNot(counts);
  if (because !== undefined) return { ...about, designEffect: null, effectiveTrials: null, interval: null, because };

  const residuals = children.reduce((sum, limbs) => sum + (successesOf(limbs) - limbs.length * estimate) ** 2, 0);
  if (residuals < 1e-12)
    return {
      ...about,
      designEffect: null,
      effectiveTrials: null,
      interval: null,
      because: "the share of successes is the same in every child, so it does not vary between children",
    };
  const variance = ((counts.children / (counts.children - 1)) * residuals) / trials ** 2;
  const designEffect = variance / ((estimate * (1 - estimate)) / trials);
  const effectiveTrials = trials / designEffect;
  const interval = wilsonLimits(counts.successes / designEffect, effectiveTrials, normalUpperQuantile((1 - level) / 2));
  return { ...about, designEffect, effectiveTrials, interval };
}

function whyNot(counts: { readonly children: number; readonly successes: number; readonly trials: number }) {
  if (counts.children === 1) return "there is only one child";
  if (counts.successes === 0) return "every limb failed";
  if (counts.successes === counts.trials) return "every limb succeeded";
  return undefined;
}
