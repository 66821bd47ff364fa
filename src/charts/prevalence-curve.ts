import { figureWidth, type Drawing } from "./drawing.js";
import { ink } from "./palette.js";
import { framed, pixels, type Layer } from "./pixels.js";
import { plotTexts, ruleLayer } from "./plot-frame.js";

export interface CurvePoint {
  /** Share of the readings, 0 to 1. */
  readonly prevalence: number;
  readonly kappa: number;
}

const frame = { left: 46, top: 14, bottom: 270 } as const;

/** Kappa over prevalence at one agreement: the curve, the level line of agreement, the place found and the place shown. */
export function prevalenceCurve(
  curve: readonly CurvePoint[],
  given: { readonly agreement: number; readonly found: CurvePoint | null; readonly shown: CurvePoint | null },
  text: { readonly axis: string; readonly agreement: string; readonly kappa: string; readonly found: string },
  options: { readonly width?: number } = {},
): Drawing {
  const { width = figureWidth } = options;
  const extent = { width, height: frame.bottom + 52 };
  const right = width - 26;
  const lowest = Math.min(-0.1, ...curve.map(({ kappa }) => kappa));
  const x = (share: number): number => frame.left + share * (right - frame.left);
  const y = (value: number): number => frame.bottom - ((value - lowest) / (1 - lowest)) * (frame.bottom - frame.top);
  const dot = (point: CurvePoint | null) => (point === null ? [] : [{ x: x(point.prevalence), y: y(point.kappa) }]);
  const scales = pixels(extent);
  const dots = (data: string, filled: boolean): Layer => ({
    data: { name: data },
    mark: { type: "point", size: 130, filled, color: ink("open"), strokeWidth: 2, opacity: 1 },
    encoding: { x: scales.x("x"), y: scales.y("y") },
  });
  const middle = curve[Math.floor(curve.length / 2)];
  return {
    spec: framed(extent, [
      ruleLayer("axes", { ink: "soft" }, extent),
      ruleLayer("agreement", { ink: "closed", width: 2, dash: [6, 4] }, extent),
      {
        data: { name: "curve" },
        mark: { type: "line", color: ink("ink"), strokeWidth: 2 },
        encoding: { x: scales.x("x"), y: scales.y("y"), order: { field: "place", type: "quantitative" } },
      },
      dots("found", false),
      dots("shown", true),
      ...plotTexts(extent),
    ]),
    rows: {
      axes: [
        { x: frame.left, y: y(0), x2: right, y2: y(0) },
        { x: frame.left, y: frame.top, x2: frame.left, y2: frame.bottom },
      ],
      agreement: [{ x: frame.left, y: y(given.agreement), x2: right, y2: y(given.agreement) }],
      curve: curve.map((point, place) => ({ x: x(point.prevalence), y: y(point.kappa), place })),
      found: dot(given.found),
      shown: dot(given.shown),
      ends: [0, 0.5, 1].map((tick) => ({ x: frame.left - 8, y: y(tick), text: String(tick) })),
      below: [
        ...[0, 0.25, 0.5, 0.75, 1].map((tick) => ({ x: x(tick), y: frame.bottom + 15, text: `${tick * 100}%` })),
        { x: (frame.left + right) / 2, y: frame.bottom + 37, text: text.axis },
      ],
      inside: [
        { x: frame.left + 8, y: y(given.agreement) - 10, text: text.agreement },
        ...(middle ? [{ x: x(middle.prevalence) + 8, y: y(middle.kappa) + 18, text: text.kappa }] : []),
        ...(given.found ? [{ x: x(given.found.prevalence) + 10, y: y(given.found.kappa) + 14, text: text.found }] : []),
      ],
    },
  };
}
