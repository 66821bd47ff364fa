import type { EffectFact, IntervalFact } from "./facts.js";
import { type Cursor, numberAt, quantityAt, take, textAt } from "./cursor.js";

/**
 * "It was 2.08 (95% CI 0.87 to 4.97)": an unnamed number in the geometric middle of its limits, and far from their plain
 * middle, is a ratio. Takes its token.
 */
export function inferredRatios(cursor: Cursor, intervals: readonly IntervalFact[]): EffectFact[] {
  return intervals.flatMap((interval): EffectFact[] => {
    const at = interval.from - 2;
    const number = numberAt(cursor, at);
    const opened = ["(", "[", ",", ";"].includes(textAt(cursor, at + 1));
    const [low, high] = [interval.low.value, interval.high.value];
    if (!number || !opened || !interval.labelled || !(low > 0 && high > low) || !Number.isFinite(high)) return [];
    if (quantityAt(cursor, at)!.quantity.unit !== null || interval.high.unit !== null) return [];
    const width = Math.log(high / low);
    const off = Math.abs(Math.log(number.value) - Math.log(low * high) / 2) / width;
    if (off > 0.04 || Math.abs(number.value - (low + high) / 2) < 0.1 * (high - low)) return [];
    const fact: EffectFact = {
      kind: "effect", from: at, to: at + 1, measure: "ratio", number: { ...number, unit: null }, about: ["inferred"],
    }; // prettier-ignore
    take(cursor, fact);
    return [fact];
  });
}
