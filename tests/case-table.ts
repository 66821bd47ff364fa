import type { CaseTable, Column, Role, Value } from "../src/cases/types.js";

/**
 * A case table for tests of what comes after the reader: a line of `name:role` heads, then one line a case. An empty cell is
 * blank, "?" is asked, "lost" is lost, "[a; b]" a list, digits a number, yes and no are themselves.
 */
export function tableOf(text: string): CaseTable {
  const [head, ...lines] = text
    .trim()
    .split("\n")
    .filter((line) => line.trim() !== "")
    .map((line) => line.split("|").map((cell) => cell.trim()));
  const columns = head!.map((cell, i): Column => {
    const [name, role] = cell.split(":");
    return { name: name!, role: (role ?? "other") as Role, position: i + 1, examples: [] };
  });
  const place = (role: Role): number => columns.findIndex((column) => column.role === role);
  const cases = lines.map((cells, i) => ({
    id: cells[place("id")]!,
    child: cells[place("child")] ?? cells[place("id")]!,
    row: i + 2,
    values: cells.map((cell, at) => valueOf(cell, columns[at]!.role)),
  }));
  return {
    file: "test.csv",
    header: { rows: [1] },
    columns,
    cases,
    setAside: [],
    identifiers: [],
    questions: [],
    log: [],
    cells: { understood: 0, asked: 0, setAside: 0 },
  } as unknown as CaseTable;
}

function valueOf(cell: string, role: Role): Value {
  if (cell === "") return { kind: "missing", reason: "blank" };
  if (cell === "?") return { kind: "asked", question: "q" };
  if (cell === "lost") return { kind: "missing", reason: "lost" };
  if (cell.startsWith("["))
    return {
      kind: "list",
      items: cell
        .slice(1, -1)
        .split(";")
        .map((item) => item.trim())
        .filter(Boolean),
    };
  if (role === "grade") return { kind: "grade", grade: cell };
  if (/^>\d/.test(cell)) return { kind: "number", number: Number(cell.slice(1)), bound: "above" };
  if (/^-?\d+(\.\d+)?$/.test(cell)) return { kind: "number", number: Number(cell) };
  if (/^\d{4}-\d\d-\d\d$/.test(cell)) return { kind: "date", iso: cell };
  if (cell === "yes" || cell === "no") return { kind: "yesNo", yes: cell === "yes" };
  return { kind: "text", text: cell };
}
