import { ink } from "./palette.js";
import { pixels, serif, type Extent, type Layer } from "./pixels.js";

/** A line of text at its place in pixels: the middle of its height, its start, middle or end by the layer's `align`. */
export interface TextRow {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

/** `label` names a row, `count` is what was counted, `note` what is derived from it. */
const styles = {
  label: { font: serif, fontWeight: 700, fontSize: 14, color: ink("ink") },
  count: { fontWeight: 700, fontSize: 14, color: ink("ink") },
  note: { fontSize: 13, color: ink("soft") },
} as const;
export type TextStyle = keyof typeof styles;
export const fontSizeOf = (style: TextStyle): number => styles[style].fontSize;

/** Text from rows of `TextRow` in the data set named `data`. */
export function textLayer(data: string, style: TextStyle, align: "left" | "center" | "right", extent: Extent): Layer {
  const { x, y } = pixels(extent);
  return {
    data: { name: data },
    mark: { type: "text", align, ...styles[style] },
    encoding: { x: x("x"), y: y("y"), text: { field: "text" satisfies keyof TextRow, type: "nominal" } },
  };
}
