import type { Ink } from "./palette.js";

export const techniques = ["closed", "assisted", "open"] as const;
export type MarkTechnique = (typeof techniques)[number];

/** One case as it is drawn. */
export interface CaseMark {
  readonly outcome: "success" | "failure";
  /** Shape and colour; a circle in the colours of success and failure when it is not told. */
  readonly technique?: MarkTechnique;
  /** Something happened to this case (a complication): crossed. */
  readonly crossed?: boolean;
  /** The outcome is supposed, not seen (a lost case): dashed. */
  readonly supposed?: boolean;
  /** Identifier that a page opens the case by. */
  readonly id?: string;
}

/** A mark at its place, in the fields that the layers name. */
export interface PlacedMark {
  readonly x: number;
  readonly y: number;
  readonly shape: MarkTechnique;
  readonly size: number;
  readonly fill: Ink | "none";
  readonly stroke: Ink;
  readonly line: "full" | "dashed";
  readonly id: string;
}

/** Distance between the middles of two neighbouring marks, in pixels. */
export const pitch = 12.5;
/** Over this many cases the marks of a row merge into a counted bar. */
export const mostMarks = 60;

/** Areas in square pixels at which the three shapes look equally large. */
const areas = { closed: 62, assisted: 66, open: 58 } as const;

/** Filled when it succeeded, an open ring when not; the shape repeats what the colour says of the technique. */
export function placed(mark: CaseMark, x: number, y: number): PlacedMark {
  const { outcome, technique, supposed = false, id = "" } = mark;
  const colour: Ink = technique ?? (outcome === "success" ? "closed" : "open");
  const shape = technique ?? "closed";
  return {
    x,
    y,
    shape,
    size: areas[shape],
    fill: outcome === "success" ? colour : "none",
    stroke: colour,
    line: supposed ? "dashed" : "full",
    id,
  };
}
