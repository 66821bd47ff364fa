import type { Redact } from "./quarantine.js";
import { keyOf } from "./table/find-keys.js";
import { addColumn, type SheetTable } from "./table/add-column.js";
import { stepOf } from "./values/technique-words.js";
import { movedLine } from "./table/moved-line.js";
import type { AsideTable, FoundTable } from "./table/find-table.js";
import { headingRole, plainHeading } from "./table/heading-words.js";
import type { Answers, Question } from "./types.js";

export const leaveTable = "no cases: leave it out";
export const joinedTable = "cases too: columns matched by name";
export const partOfCases = "part of the cases: keep its columns";
const willBeMended = "the file will be corrected";
export const rightTableId = "table to the right";

/** One question for each other table of the sheet; a key to the codes is used where its codes stand and not asked about. */
export function askTables({ tables, names }: FoundTable, redact: Redact): Question[] {
  return tables
    .filter((table) => !keyOf(table))
    .map((table): Question => {
      const text = redact(table.text);
      const title = table.title === "" ? "" : `"${redact(table.title)}", `;
      const rows = table.lines.map(({ row }) => row.number);
      const size = `${rows.length} ${rows.length === 1 ? "row" : "rows"}`;
      const joins = matched(table, names) ? [joinedTable] : [];
      if (table.place === "right")
        return {
          ...{ id: rightTableId, rows, column: "", text, choices: [leaveTable, partOfCases, ...joins] },
          asks: `to the right of an empty column stands something of ${size} (${text}): another table, or part of the cases?`,
        };
      return {
        ...{ id: tableId(table, redact), rows, column: "", text },
        asks: `below the cases stands another table of ${size} (${title}${text}): does it hold cases?`,
        choices: [leaveTable, ...(joins.length > 0 ? joins : [willBeMended])],
      };
    });
}

export function tableId({ place, text }: AsideTable, redact: Redact): string {
  return place === "right" ? rightTableId : `table | ${redact(text)}`;
}

/** Lines of tables below that an answer makes cases, their cells moved under the names of the cases' columns. */
export function joinTables(found: FoundTable, answers: Answers, redact: Redact): FoundTable {
  const joined = found.tables.filter((table) => {
    const id = tableId(table, redact);
    return (
      table.place === "below" &&
      Object.hasOwn(answers, id) &&
      answers[id] === joinedTable &&
      matched(table, found.names)
    );
  });
  return joined.length === 0 ? found : withLines(found, joined);
}

/** The table to the right as further cases, where an answer says so; the groups named above both become a column. */
export function joinRight(table: SheetTable, answers: Answers): SheetTable {
  const { found } = table;
  const right = found.tables.find(({ place }) => place === "right");
  if (!right || answers[rightTableId] !== joinedTable || !matched(right, found.names)) return table;
  const joined = { ...table, found: withLines(found, [right]) };
  const groups = [found.names, right.names].map(groupOf);
  if (groups.some((group) => group === undefined)) return joined;
  const own = new Set(found.lines);
  const name = groups.every((group) => stepOf(group!)) ? "Technique" : "Group";
  return addColumn(joined, name, (line) => (own.has(line) ? groups[0]! : groups[1]!));
}

/** The group that stands over all of these names. */
function groupOf(names: readonly string[]): string | undefined {
  const groups = new Set(names.filter((name) => name !== "").map((name) => name.split(": ").slice(0, -1).join(": ")));
  const [only] = groups;
  return groups.size === 1 && only !== "" ? only : undefined;
}

function withLines(found: FoundTable, joined: readonly AsideTable[]): FoundTable {
  const lines = joined.flatMap((table) => {
    const places = placesOf(table, found.names);
    return table.lines.map((line) => movedLine(line, places));
  });
  const moved = new Set(lines.map(({ row }) => row.number));
  return {
    ...found,
    lines: [...found.lines, ...lines].toSorted((a, b) => a.row.number - b.row.number),
    setAside: found.setAside.filter(({ row }) => !moved.has(row)),
    tables: found.tables.filter((table) => !joined.includes(table)),
  };
}

/** Whether half of a table's columns, the case numbers among them, have names of the cases' columns. */
function matched(table: AsideTable, names: readonly string[]): boolean {
  const named = table.names.filter((name) => name !== "").length;
  const places = placesOf(table, names);
  const id = names.findIndex((name) => headingRole(name.split(": ").at(-1)!) === "id");
  return places.length >= 2 && places.length * 2 >= named && (id < 0 || places.some(([, to]) => to === id));
}

/** Column of the table and column of the cases with the same name. */
export function placesOf(
  { names }: Pick<AsideTable, "names">,
  wanted: readonly string[],
): (readonly [from: number, to: number])[] {
  const known = new Map<string, number>();
  wanted.forEach((name, c) => {
    for (const part of [name, name.split(": ").at(-1)!])
      if (part !== "" && !known.has(plainHeading(part))) known.set(plainHeading(part), c);
  });
  const taken = new Set<number>();
  return names.flatMap((name, from): (readonly [number, number])[] => {
    const to =
      name === "" ? undefined : (known.get(plainHeading(name)) ?? known.get(plainHeading(name.split(": ").at(-1)!)));
    if (to === undefined || taken.has(to)) return [];
    taken.add(to);
    return [[from, to]];
  });
}
