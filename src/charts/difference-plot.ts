import { figureWidth, type Drawing } from "./drawing.js";
import { framed } from "./pixels.js";
import { boxLayer, plotTexts, pointLayer, roundTicks, ruleLayer, type PointRow, type RuleRow } from "./plot-frame.js";

export interface DifferencePoint {
  readonly id: string;
  readonly mean: number;
  readonly difference: number;
}

/** A horizontal line with the band of its interval. */
export interface DifferenceLine {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly text: string;
}

const height = 340;
const frame = { left: 46, top: 12, bottom: 300 } as const;

/**
 * Difference of two measurements against their mean, every radiograph a mark: filled inside the limits of agreement, a
 * ring outside.
 */
export function differencePlot(
  points: readonly DifferencePoint[],
  lines: { readonly lower: DifferenceLine; readonly bias: DifferenceLine; readonly upper: DifferenceLine },
  text: { readonly mean: string; readonly difference: string },
  options: { readonly width?: number } = {},
): Drawing {
  const { width = figureWidth } = options;
  const extent = { width, height: height + 14 };
  const wide = width >= 480;
  const right = width - (wide ? 128 : 8);
  const values = [...points.map(({ difference }) => difference), lines.lower.low, lines.upper.high];
  const [xLow, xHigh] = ends(points.map(({ mean }) => mean));
  const [yLow, yHigh] = ends(values);
  const x = (value: number): number => frame.left + ((value - xLow) / (xHigh - xLow)) * (right - frame.left);
  const y = (value: number): number => frame.bottom - ((value - yLow) / (yHigh - yLow)) * (frame.bottom - frame.top);
  const across = (value: number): RuleRow => ({ x: frame.left, y: y(value), x2: right, y2: y(value) });
  const all = [lines.lower, lines.bias, lines.upper];
  return {
    spec: framed(extent, [
      boxLayer("bands", { ink: "closed", opacity: 0.14 }, extent),
      ruleLayer("axes", { ink: "soft" }, extent),
      ruleLayer("zero", { ink: "soft", dash: [2, 3] }, extent),
      ruleLayer("bias", { ink: "ink", width: 1.5 }, extent),
      ruleLayer("limits", { ink: "ink", width: 1.5, dash: [6, 4] }, extent),
      pointLayer("points", 52, extent),
      ...plotTexts(extent),
    ]),
    rows: {
      bands: all.map(({ low, high }) => ({ x: frame.left, y: y(high), x2: right, y2: y(low) })),
      axes: [
        { x: frame.left, y: frame.bottom, x2: right, y2: frame.bottom },
        { x: frame.left, y: frame.top, x2: frame.left, y2: frame.bottom },
      ],
      zero: [across(0)],
      bias: [across(lines.bias.value)],
      limits: [across(lines.lower.value), across(lines.upper.value)],
      points: points.map(({ id, mean, difference }): PointRow => {
        const inside = difference >= lines.lower.value && difference <= lines.upper.value;
        return {
          x: x(mean),
          y: y(difference),
          id,
          fill: inside ? "closed" : "none",
          stroke: inside ? "closed" : "open",
        };
      }),
      ends: roundTicks(yLow, yHigh, 6).map((tick) => ({ x: frame.left - 8, y: y(tick), text: tickText(tick) })),
      below: [
        ...roundTicks(xLow, xHigh, 6).map((tick) => ({ x: x(tick), y: frame.bottom + 15, text: tickText(tick) })),
        { x: (frame.left + right) / 2, y: frame.bottom + 36, text: text.mean },
      ],
      inside: [
        { x: frame.left + 6, y: frame.top + 2, text: text.difference },
        ...all.map((line) => ({
          x: wide ? right + 8 : frame.left + 6,
          y: y(line.value) - (wide ? 0 : 9),
          text: line.text,
        })),
      ],
    },
  };
}

/** Lowest and highest with a margin, so that no mark is cut; never of no length. */
function ends(values: readonly number[]): [number, number] {
  const [low, high] = [Math.min(0, ...values), Math.max(0, ...values)];
  const margin = 0.06 * (high - low || 1);
  return [low < 0 ? low - margin : low, high + margin];
}

function tickText(value: number): string {
  return String(Number(value.toPrecision(6))).replace("-", "\u2212");
}
