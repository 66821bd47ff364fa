import type { Span } from "../text/token.js";
import { cellCount } from "./cell-values.js";

/** A cell as it stands in HTML. */
export interface RawCell extends Span {
  readonly across: number;
  readonly down: number;
}

/** Wider or deeper merging than a printed table has. */
const most = 60;

/** The `colspan` and `rowspan` of a cell's tag, 1 when it has none. */
export function spansOf(tag: string): { across: number; down: number } {
  const read = (name: string): number => {
    const found = new RegExp(`${name}\\s{0,3}=\\s{0,3}["']?(\\d{1,3})`, "i").exec(tag);
    return Math.min(most, Math.max(1, Number(found?.[1] ?? 1)));
  };
  return { across: read("colspan"), down: read("rowspan") };
}

/**
 * Rows with merged cells laid out: words are repeated in every place they cover, so that each column has its head and
 * each row its label; a number stays in the first place alone, so that nothing counts it twice.
 */
export function laidOut(rows: readonly (readonly RawCell[])[]): Span[][] {
  const waiting = new Map<number, { cell: Span; left: number }>();
  return rows.map((row) => {
    const placed: Span[] = [];
    const put = (cell: Span): void => void placed.push(cell);
    const fill = (): void => {
      for (let above = waiting.get(placed.length); above; above = waiting.get(placed.length)) {
        if (above.left > 1) waiting.set(placed.length, { cell: above.cell, left: above.left - 1 });
        else waiting.delete(placed.length);
        put(above.cell);
      }
    };
    for (const { across, down, ...cell } of row) {
      fill();
      const again = cellCount(cell.text) === null ? cell : { ...cell, text: "" };
      for (let i = 0; i < across; i++) {
        if (down > 1) waiting.set(placed.length, { cell: again, left: down - 1 });
        put(i === 0 ? cell : again);
      }
    }
    fill();
    return placed;
  });
}
