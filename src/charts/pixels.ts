import type { TopLevelSpec } from "vega-lite";
import { ink } from "./palette.js";

/** One layer of a layered specification. */
export type Layer = Extract<TopLevelSpec, { layer: unknown }>["layer"][number];

/** Size of a picture in pixels, and room below for an axis. */
export interface Extent {
  readonly width: number;
  readonly height: number;
  readonly below?: number;
}

/** Encodings of a place given in pixels: the fields of a row are where it is drawn. */
export function pixels({ width, height }: Extent) {
  const scale = (end: number) => ({ domain: [0, end], range: [0, end], nice: false, zero: false });
  return {
    x: (field: string) => ({ field, type: "quantitative" as const, axis: null, scale: scale(width) }),
    y: (field: string) => ({ field, type: "quantitative" as const, axis: null, scale: scale(height) }),
  };
}

export const sans = "DejaVu Sans, Verdana, Arial, sans-serif";
export const serif = "DejaVu Serif, Georgia, serif";

/** Layers put together into a picture of a fixed size; those at top level each have a horizontal scale of their own. */
export function framed(extent: Extent, layer: readonly Layer[]): TopLevelSpec {
  return {
    $schema: "https://vega.github.io/schema/vega-lite/v6.json",
    width: extent.width,
    height: extent.height,
    autosize: { type: "none" },
    padding: { left: 0, right: 0, top: 0, bottom: extent.below ?? 0 },
    background: "transparent",
    layer: [...layer],
    resolve: { scale: { x: "independent" }, axis: { x: "independent" } },
    config: {
      aria: false,
      font: sans,
      view: { stroke: null },
      text: { color: ink("ink"), fontSize: 13, baseline: "middle" },
      axis: {
        labelColor: ink("soft"),
        labelFontSize: 12,
        titleColor: ink("soft"),
        titleFontSize: 12,
        titleFontWeight: 400,
      },
    },
  };
}
