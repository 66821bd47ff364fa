import type { Findings } from "../findings/types.js";
import { counted } from "./number-text.js";

export interface UnitWords {
  readonly one: string;
  readonly many: string;
  readonly Many: string;
  /** "64 shoulders in 61 children". */
  readonly both: (cases: number, children: number) => string;
}

/** The words for the unit that a findings object counts in. */
export function unitWords({ unit, limb }: Pick<Findings, "unit" | "limb">): UnitWords {
  if (unit === "child")
    return { one: "child", many: "children", Many: "Children", both: (cases) => counted(cases, "child", "children") };
  const many = `${limb}s`;
  return {
    one: limb,
    many,
    Many: many[0]!.toUpperCase() + many.slice(1),
    both: (cases, children) => `${counted(cases, limb, many)} in ${counted(children, "child", "children")}`,
  };
}
