import { heterogeneity } from "../../stats/series/heterogeneity.js";
import { logitEffects } from "../../stats/series/logit-effects.js";
import type { SeriesRatesResult } from "../../stats/series/series-rates.js";
import type { PaperCard } from "./paper-card.js";

/** A grade's share differing by more than this between two series makes their overall rates hard to put together. */
const mixTolerance = 0.2;

/** A reason not to put series together, with what it rests on. */
export type PoolReason =
  | { readonly kind: "few series"; readonly series: number }
  | { readonly kind: "definitions differ" }
  | { readonly kind: "definition not known" }
  | { readonly kind: "units differ" }
  | { readonly kind: "mixes differ"; readonly grade: string; readonly low: number; readonly high: number }
  | { readonly kind: "rates differ"; readonly iSquared: number };

/** Why the series had better not be put together; each reason stands alone. */
export function reasonsNotToPool(cards: readonly PaperCard[], rates: SeriesRatesResult): PoolReason[] {
  const units = new Set(cards.map(({ unit }) => unit));
  const counted = rates.series.flatMap(({ crude }) =>
    crude.estimate === null ? [] : [{ successes: crude.successes, trials: crude.cases }],
  );
  const apart = widestShare(rates);
  const reasons: PoolReason[] = [];
  if (counted.length < 5) reasons.push({ kind: "few series", series: counted.length });
  if (cards.some(({ match }) => match === "different")) reasons.push({ kind: "definitions differ" });
  if (cards.some(({ match }) => match === "not stated")) reasons.push({ kind: "definition not known" });
  if (units.has("limbs") && units.has("children")) reasons.push({ kind: "units differ" });
  if (apart !== null) reasons.push({ kind: "mixes differ", ...apart });
  if (counted.length >= 2) {
    const { iSquared } = heterogeneity(logitEffects(counted));
    if (iSquared > 0.5) reasons.push({ kind: "rates differ", iSquared });
  }
  return reasons;
}

/** The grade whose share differs most between two series, when that is much. */
function widestShare({
  series,
  mix,
}: SeriesRatesResult): { readonly grade: string; readonly low: number; readonly high: number } | null {
  const spans = mix.map(({ grade: name }) => {
    const shares = series.flatMap(({ grades, crude }) => {
      if (crude.cases === null || crude.cases === 0) return [];
      return [(grades.find((rate) => rate.grade === name)?.cases ?? 0) / crude.cases];
    });
    return { grade: name, low: Math.min(1, ...shares), high: Math.max(0, ...shares) };
  });
  const widest = spans.toSorted((a, b) => b.high - b.low - (a.high - a.low))[0];
  if (widest === undefined || widest.high - widest.low <= mixTolerance) return null;
  return widest;
}
