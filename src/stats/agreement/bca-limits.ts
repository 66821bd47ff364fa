import { normalCdf, normalQuantile } from "../../numeric/normal.js";
import type { Interval } from "../types.js";

/**
 * Bias-corrected and accelerated limits from resampled values; null when the resamples leave no spread.
 *
 * @param resampled values of the resamples, sorted in place
 * @param estimate the value of the data
 * @param acceleration from the jackknife
 * @see Efron 1987, J Am Stat Assoc 82:171-185; ties count half in the bias correction, as discrete data need
 */
export function bcaLimits(
  resampled: Float64Array,
  estimate: number,
  acceleration: number,
  level: number,
): Interval | null {
  const count = resampled.length;
  if (count === 0) return null;
  resampled.sort();
  const [first, last] = [resampled[0]!, resampled[count - 1]!];
  if (last - first <= 1e-12 * Math.abs(last)) return null;
  // Resampled values are sums in another order: equal to the estimate means equal but for rounding.
  const slack = 1e-12 * Math.max(1, Math.abs(estimate));
  let below = 0;
  let equal = 0;
  for (const value of resampled) {
    if (value < estimate - slack) below++;
    else if (value <= estimate + slack) equal++;
  }
  const share = Math.min(Math.max((below + equal / 2) / count, 0.5 / count), 1 - 0.5 / count);
  const bias = normalQuantile(share);
  const at = (p: number): number => {
    const z = bias + normalQuantile(p);
    const scale = 1 - acceleration * z;
    // Past the pole of the correction the limit is the outermost resample on its side.
    const adjusted = scale > 0 ? normalCdf(bias + z / scale) : z > 0 ? 1 : 0;
    return sortedQuantile(resampled, adjusted);
  };
  return { low: at((1 - level) / 2), high: at((1 + level) / 2) };
}

function sortedQuantile(sorted: Float64Array, p: number): number {
  const place = (sorted.length - 1) * p;
  const below = Math.floor(place);
  const low = sorted[below]!;
  return low + (place - below) * (sorted[Math.min(below + 1, sorted.length - 1)]! - low);
}
