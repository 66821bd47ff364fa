import { ink } from "./palette.js";
import { pixels, type Extent, type Layer } from "./pixels.js";
import { textLayer, type TextRow } from "./text-layer.js";

/** A straight line between two places in pixels. */
export interface RuleRow {
  readonly x: number;
  readonly y: number;
  readonly x2: number;
  readonly y2: number;
}

/** A radiograph as a mark that opens. */
export interface PointRow {
  readonly x: number;
  readonly y: number;
  readonly id: string;
  /** Filled when raters agree or the grade is safe, an open ring otherwise. */
  readonly fill: "closed" | "none";
  readonly stroke: "closed" | "open";
}

/** Round steps (1, 2 or 5 times a power of ten) that span two ends with about so many parts. */
export function roundTicks(low: number, high: number, parts: number): number[] {
  const span = high > low ? high - low : 1;
  const power = 10 ** Math.floor(Math.log10(span / parts));
  const step = [1, 2, 5, 10].map((factor) => factor * power).find((each) => span / each <= parts) ?? 10 * power;
  const from = Math.ceil(low / step - 1e-9);
  const to = Math.floor(high / step + 1e-9);
  return Array.from({ length: to - from + 1 }, (_, k) => (from + k) * step);
}

/** Lines of one ink from rows of `RuleRow`. */
export function ruleLayer(
  data: string,
  style: { readonly ink: Parameters<typeof ink>[0]; readonly width?: number; readonly dash?: readonly number[] },
  extent: Extent,
): Layer {
  const { x, y } = pixels(extent);
  return {
    data: { name: data },
    mark: {
      type: "rule",
      color: ink(style.ink),
      strokeWidth: style.width ?? 1,
      ...(style.dash ? { strokeDash: [...style.dash] } : {}),
    },
    encoding: {
      x: x("x"),
      y: y("y"),
      x2: { field: "x2" satisfies keyof RuleRow },
      y2: { field: "y2" satisfies keyof RuleRow },
    },
  };
}

/** Shaded boxes from rows of `RuleRow`. */
export function boxLayer(
  data: string,
  style: { readonly ink: Parameters<typeof ink>[0]; readonly opacity: number },
  extent: Extent,
): Layer {
  const { x, y } = pixels(extent);
  return {
    data: { name: data },
    mark: { type: "rect", color: ink(style.ink), opacity: style.opacity },
    encoding: {
      x: x("x"),
      y: y("y"),
      x2: { field: "x2" satisfies keyof RuleRow },
      y2: { field: "y2" satisfies keyof RuleRow },
    },
  };
}

/** Marks of radiographs from rows of `PointRow`: what was drawn as a ring stays a ring in grey. */
export function pointLayer(data: string, size: number, extent: Extent): Layer {
  const { x, y } = pixels(extent);
  const scale = { domain: ["closed", "open", "none"], range: [ink("closed"), ink("open"), "transparent"] };
  return {
    data: { name: data },
    mark: { type: "point", size, strokeWidth: 1.5, opacity: 1 },
    encoding: {
      x: x("x"),
      y: y("y"),
      fill: { field: "fill" satisfies keyof PointRow, type: "nominal", scale, legend: null },
      stroke: { field: "stroke" satisfies keyof PointRow, type: "nominal", scale, legend: null },
    },
  };
}

/** Text layers for labels at the left of, under, and inside a plot. */
export function plotTexts(extent: Extent): Layer[] {
  return [
    textLayer("ends", "note", "right", extent),
    textLayer("below", "note", "center", extent),
    textLayer("inside", "note", "left", extent),
  ];
}

export type PlotTexts = Readonly<Record<"ends" | "below" | "inside", readonly TextRow[]>>;
