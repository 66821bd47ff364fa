import type { Doubt, Draft } from "../doubts.js";
import { questionId } from "../values/read-column.js";
import { birthDates } from "./ask-date-order.js";
import { dateColumns } from "./date-words.js";

const tolerance = 1;

/** Ages that do not fit the birth date and the date of injury or treatment, by more than a year. The birth date is not shown. */
export function askAges(draft: Draft): Doubt[] {
  const columns = dateColumns(draft);
  const age = draft.roles.indexOf("age");
  const birth = columns.get("birth");
  const event = columns.get("injury") ?? columns.get("treatment");
  if (age < 0 || birth === undefined || event === undefined) return [];
  const born = birthDates(draft, birth);
  return draft.lines.flatMap(({ row }, line): Doubt[] => {
    const [typed, date] = [draft.values[age]![line]!, draft.values[event]![line]!];
    if (typed.kind !== "number" || date.kind !== "date" || born[line] === undefined) return [];
    const years = (Date.parse(date.iso) - Date.parse(born[line])) / (365.25 * 86_400_000);
    if (years < 0 || Math.abs(years - typed.number) <= tolerance) return [];
    const text = `${Number(typed.number.toFixed(2))} years`;
    return [
      {
        id: `${questionId(draft.names[age]!, "age against dates", text)} @ ${draft.cases[line]!.id}`,
        column: draft.names[age]!,
        text,
        asks: `the age of ${text} and the dates of birth and "${draft.names[event]}" differ by more than a year: which is right?`,
        rows: [row.number],
        blocks: [],
        choices: [
          { label: "the age as typed" },
          {
            label: "the age by the dates",
            sets: [{ line, column: age, value: { kind: "number", number: Math.floor(years) } }],
          },
          { label: "not known", sets: [{ line, column: age, value: { kind: "missing", reason: "unknown" } }] },
        ],
      },
    ];
  });
}
