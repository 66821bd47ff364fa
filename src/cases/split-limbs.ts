import type { CaseName } from "./table/identify-cases.js";
import type { Line } from "./table/find-table.js";
import type { CaseRow, Value } from "./types.js";

/** Values of the two limbs where one cell held both. */
export interface Limbs {
  readonly left: Value;
  readonly right: Value;
}

/**
 * The row as one case, or as two limbs of one child when the answer about its side says so.
 * @param limbsOf values of the two limbs by column, where one cell held both
 */
export function splitLimbs(
  line: Line,
  name: CaseName,
  values: readonly Value[],
  side: number,
  limbsOf: (column: number) => Limbs | undefined,
): CaseRow[] {
  const both = side >= 0 ? values[side] : undefined;
  const row = line.row.number;
  if (!(both?.kind === "text" && both.text === "both")) {
    // Two values in a cell of a row with one side: that of the limb which the row is about.
    const limb = both?.kind === "text" && (both.text === "left" || both.text === "right") ? both.text : undefined;
    const apart = limb !== undefined && values.some((_, k) => limbsOf(k) !== undefined);
    const own = !apart ? values : values.map((value, k) => limbsOf(k)?.[limb] ?? value);
    return [{ id: name.id, child: name.child, row, values: own }];
  }
  const base = name.typed === "" ? name.id : name.child;
  return (["left", "right"] as const).map((limb) => ({
    id: `${base} ${limb}`,
    child: name.child,
    row,
    values: values.map((value, k) => (k === side ? { kind: "text", text: limb } : (limbsOf(k)?.[limb] ?? value))),
  }));
}
