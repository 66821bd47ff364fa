// With read-workbook.ts the only file that knows hucre.
import { writeXlsx } from "hucre";

/** One column of a sheet to fill in: its heading, the allowed entries or the kind of entry, and a line of help. */
export interface FormColumn {
  readonly heading: string;
  readonly entries?: readonly string[];
  readonly number?: { readonly low: number; readonly high: number };
  readonly date?: true;
  readonly help: string;
}

const rows = 300;
const epoch = new Date("2020-01-01T00:00:00Z");

/** A workbook with one empty sheet to fill in, its entries checked while typing, and a sheet that explains the columns. */
export function writeForm(name: string, columns: readonly FormColumn[]): Promise<Uint8Array> {
  return writeXlsx({
    properties: { created: epoch, modified: epoch },
    sheets: [
      {
        name,
        rows: [columns.map(({ heading }) => heading)],
        columns: columns.map(({ heading }) => ({ width: Math.max(10, heading.length + 2) })),
        freezePane: { rows: 1 },
        dataValidations: columns.flatMap((column, c) => validation(column, `${letter(c)}2:${letter(c)}${rows + 1}`)),
      },
      {
        name: "Columns",
        rows: [
          ["Column", "Entries", "Meaning"],
          ...columns.map((column) => [column.heading, entriesOf(column), column.help]),
        ],
        columns: [{ width: 34 }, { width: 44 }, { width: 90 }],
      },
    ],
  });
}

function validation(
  { entries, number, date, heading, help }: FormColumn,
  range: string,
): Parameters<typeof writeXlsx>[0]["sheets"][number]["dataValidations"] & object {
  const shared = {
    range,
    allowBlank: true,
    showErrorMessage: true,
    errorTitle: heading.slice(0, 32),
    showInputMessage: true,
    inputTitle: heading.slice(0, 32),
    inputMessage: help.slice(0, 250),
  };
  if (entries)
    return [
      { ...shared, type: "list", values: [...entries], errorMessage: `one of: ${entries.join(", ")}`.slice(0, 250) },
    ];
  if (number)
    return [
      {
        ...shared,
        type: "decimal",
        operator: "between",
        formula1: String(number.low),
        formula2: String(number.high),
        errorMessage: `a number from ${number.low} to ${number.high}`,
      },
    ];
  if (date)
    return [
      {
        ...shared,
        type: "date",
        operator: "greaterThan",
        formula1: "25569",
        errorMessage: "a date, such as 2026-01-31",
      },
    ];
  return [];
}

function entriesOf({ entries, number, date }: FormColumn): string {
  if (entries) return entries.join(", ");
  if (number) return `a number from ${number.low} to ${number.high}`;
  return date ? "a date" : "text";
}

/** Column letters of a sheet: 0 is A, 26 is AA. */
function letter(c: number): string {
  return (c >= 26 ? letter(Math.floor(c / 26) - 1) : "") + String.fromCharCode(65 + (c % 26));
}
