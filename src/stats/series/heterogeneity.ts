import { chiSquareUpper } from "../../numeric/chi-square.js";
import { requireEffects, weighted, type Effect } from "./effects.js";

export interface Heterogeneity {
  readonly method: "Cochran's Q";
  readonly q: number;
  readonly df: number;
  readonly p: number;
  /** Share of the variation beyond chance, (Q - df) / Q, 0 at least; 0 for one series. */
  readonly iSquared: number;
}

/**
 * Variation between series beyond chance.
 *
 * @param effects one or more
 * @throws RangeError when an effect is not valid
 * @see Cochran 1954, Biometrics 10:101-129; Higgins and Thompson 2002, Stat Med 21:1539-1558
 * @example heterogeneity([{ estimate: 0, variance: 1 }, { estimate: 4, variance: 1 }]).iSquared // => 0.875
 */
export function heterogeneity(effects: readonly Effect[]): Heterogeneity {
  requireEffects("heterogeneity", effects);
  const { q } = weighted(effects, ({ variance }) => 1 / variance);
  const df = effects.length - 1;
  return {
    method: "Cochran's Q",
    q,
    df,
    p: df === 0 ? 1 : chiSquareUpper(q, df),
    iSquared: q > df ? (q - df) / q : 0,
  };
}
