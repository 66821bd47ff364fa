import type { RowText } from "./columns-of.js";
import type { Drawing } from "./drawing.js";
import { markRows } from "./mark-rows.js";

/** One kind of event: how many cases had it, and how often it may occur, as fractions. */
export interface EventLimitsRow extends RowText {
  /** Identifiers of the cases that had it; a crossed mark each. */
  readonly events: readonly string[];
  readonly estimate: number;
  readonly interval: { readonly low: number; readonly high: number };
  readonly inner: { readonly low: number; readonly high: number };
}

/** Ends of the axis to choose from: the shortest that holds every interval. */
const ends = [0.05, 0.1, 0.2, 0.4, 0.6, 1];

/** Rare events, those never seen included: a cross for each that was seen, over the band that says how many could be. */
export function eventLimits(rows: readonly EventLimitsRow[], options: { readonly width?: number } = {}): Drawing {
  const highest = Math.max(0, ...rows.map((row) => row.interval.high));
  const end = ends.find((limit) => limit >= highest) ?? 1;
  return markRows(
    rows.map(({ events, estimate, interval, inner, ...text }) => ({
      ...text,
      groups: [events.map((id) => ({ outcome: "failure" as const, crossed: true, id }))],
      band: { estimate, ...interval, innerLow: inner.low, innerHigh: inner.high },
    })),
    { ...options, axis: { domain: [0, end], ticks: [0, end / 2, end], format: ".1~%" } },
  );
}
