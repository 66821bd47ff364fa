import { figureWidth, type Drawing } from "./drawing.js";
import { framed } from "./pixels.js";
import { boxLayer, plotTexts, pointLayer, roundTicks, ruleLayer, type PointRow, type RuleRow } from "./plot-frame.js";
import { fontSizeOf, textLayer } from "./text-layer.js";
import { textWidth } from "./text-width.js";

export interface StripReading {
  readonly id: string;
  readonly value: number;
}

export interface Strip {
  readonly label: string;
  readonly readings: readonly StripReading[];
}

const rowHeight = 62;
const leastLeft = 56;
const mark = 7;

/**
 * Each reader's measurements on a strip of their own, with the cut-points as lines and about each the band in which the
 * error of measurement leaves the grade in doubt. Marks in a band are rings.
 */
export function raterStrips(
  strips: readonly Strip[],
  cuts: readonly number[],
  text: { readonly grades: readonly string[]; readonly axis: string; readonly error: number },
  options: { readonly width?: number } = {},
): Drawing {
  const { width = figureWidth } = options;
  const [top, bottom] = [30, 30 + rowHeight * strips.length];
  const extent = { width, height: bottom + 50 };
  const right = width - 10;
  const left = Math.max(leastLeft, ...strips.map(({ label }) => Math.ceil(textWidth(label, fontSizeOf("note"))) + 14));
  const values = [...strips.flatMap(({ readings }) => readings.map(({ value }) => value)), ...cuts];
  const [low, high] = [Math.min(0, ...values), Math.max(...values) * 1.03 + 1e-9];
  const x = (value: number): number => left + ((value - low) / (high - low)) * (right - left);
  const reach = 1.96 * text.error;
  const doubtful = (value: number): boolean => cuts.some((cut) => Math.abs(value - cut) <= reach);
  const inside = (value: number): number => Math.min(right, Math.max(left, x(value)));
  const edges = [low, ...cuts, high];
  return {
    spec: framed(extent, [
      boxLayer("bands", { ink: "open", opacity: 0.14 }, extent),
      ruleLayer("rows", { ink: "line" }, extent),
      ruleLayer("cuts", { ink: "ink", width: 1.5 }, extent),
      pointLayer("points", 34, extent),
      textLayer("grades", "label", "center", extent),
      ...plotTexts(extent),
    ]),
    rows: {
      bands: merged(cuts.map((cut) => [inside(cut - reach), inside(cut + reach)])).map(([from, to]): RuleRow => ({
        x: from,
        y: top,
        x2: to,
        y2: bottom,
      })),
      rows: strips.map((_, k) => ({ x: left, y: top + rowHeight * (k + 1), x2: right, y2: top + rowHeight * (k + 1) })),
      cuts: cuts.map((cut) => ({ x: x(cut), y: top - 6, x2: x(cut), y2: bottom })),
      points: strips.flatMap(({ readings }, k) => stacked(readings, x, top + rowHeight * (k + 1) - 8, doubtful)),
      grades: text.grades.map((name, k) => ({ x: (x(edges[k]!) + x(edges[k + 1]!)) / 2, y: 14, text: name })),
      ends: strips.map(({ label }, k) => ({ x: left - 10, y: top + rowHeight * (k + 0.5), text: label })),
      below: [
        ...roundTicks(low, high, 6).map((tick) => ({ x: x(tick), y: bottom + 14, text: String(tick) })),
        { x: (left + right) / 2, y: bottom + 34, text: text.axis },
      ],
      inside: [],
    },
  };
}

/** Rising stretches with those that meet made one, so that no part is shaded twice. */
function merged(stretches: readonly (readonly [number, number])[]): (readonly [number, number])[] {
  const out: (readonly [number, number])[] = [];
  for (const [from, to] of stretches) {
    const last = out.at(-1);
    if (last && from <= last[1]) out[out.length - 1] = [last[0], Math.max(last[1], to)];
    else out.push([from, to]);
  }
  return out;
}

/** Marks piled from the line up where they would cover each other; a high pile is pressed together. */
function stacked(
  readings: readonly StripReading[],
  x: (value: number) => number,
  base: number,
  doubtful: (value: number) => boolean,
): PointRow[] {
  const piles = new Map<number, number>();
  const heights = new Map<number, number>();
  for (const { value } of readings) {
    const pile = Math.round(x(value) / mark);
    heights.set(pile, (heights.get(pile) ?? 0) + 1);
  }
  const tallest = Math.max(1, ...heights.values());
  const step = Math.min(mark, (rowHeight - 18) / tallest);
  return readings.map(({ id, value }) => {
    const pile = Math.round(x(value) / mark);
    const height = piles.get(pile) ?? 0;
    piles.set(pile, height + 1);
    const doubt = doubtful(value);
    return {
      x: x(value),
      y: base - step * height,
      id,
      fill: doubt ? "none" : "closed",
      stroke: doubt ? "open" : "closed",
    };
  });
}
