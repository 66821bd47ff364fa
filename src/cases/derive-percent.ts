import type { Answers, CaseTable, Column, Question, Value } from "./types.js";
import { namesMotion, namesWidth } from "./table/heading-words.js";

const add = "add the percentage as a column of its own";
const leave = "leave it in mm";

/**
 * A displacement in mm beside the width of the bone can be given in per cent of the width: offered, and added on an answer.
 * Both stay; the column that was typed is not changed.
 */
export function derivePercent(table: CaseTable, answers: Answers): CaseTable {
  const width = table.columns.findIndex(({ name, role }) => role !== "identifier" && namesWidth(name));
  if (width < 0) return table;
  const numbered = (k: number): boolean => table.cases.some(({ values }) => values[k]!.kind === "number");
  const lengths = table.columns.flatMap(({ name, role, unit }, k) =>
    role === "measurement" && unit === "mm" && k !== width && !namesMotion(name) && numbered(k) ? [k] : [],
  );
  if (!numbered(width)) return table;
  let out = table;
  for (const k of lengths) {
    const question = questionOf(table.columns[k]!, table.columns[width]!);
    const answer = Object.hasOwn(answers, question.id) ? answers[question.id] : undefined;
    if (answer === undefined) out = { ...out, questions: [...out.questions, question] };
    if (answer === add) out = withPercent(out, k, width);
  }
  return out;
}

function questionOf({ name }: Column, width: Column): Question {
  return {
    id: `${name} | percent of ${width.name}`,
    rows: [],
    column: name,
    text: "",
    asks: `"${name}" is in mm and "${width.name}" stands beside it: give it in per cent of the width too?`,
    choices: [add, leave],
  };
}

function withPercent(table: CaseTable, k: number, width: number): CaseTable {
  const column = table.columns[k]!;
  const values = table.cases.map((one) => percentOf(one.values[k]!, one.values[width]!));
  const name = `${column.name}, % of ${table.columns[width]!.name}`;
  const shown = values.flatMap((value) => (value.kind === "number" ? [`${value.number} percent`] : []));
  const derived: Column = {
    name,
    role: "measurement",
    position: column.position,
    examples: shown.slice(0, 3),
    unit: "percent",
  };
  return {
    ...table,
    columns: [...table.columns, derived],
    cases: table.cases.map((one, i) => ({ ...one, values: [...one.values, values[i]!] })),
  };
}

/** A bound stays a bound; a length or width that is asked about leaves the share asked about. */
function percentOf(length: Value, width: Value): Value {
  if (length.kind === "asked") return length;
  if (width.kind === "asked") return width;
  if (length.kind !== "number") return length.kind === "missing" ? length : { kind: "missing", reason: "unknown" };
  if (width.kind !== "number" || width.number <= 0 || width.bound) return { kind: "missing", reason: "unknown" };
  return { ...length, number: Number(((length.number / width.number) * 100).toPrecision(15)), unit: "percent" };
}
