import type { Doubt, Draft } from "../doubts.js";
import { wordSuffix } from "../table/identify-cases.js";
import type { Answers } from "../types.js";
import { questionId } from "../values/read-column.js";

/** Study numbers: gaps in the sequence, numbers spoiled by the sheet program, leading zeros lost, rows without one. */
export function askNumbers(draft: Draft): Doubt[] {
  const k = draft.roles.indexOf("id");
  if (k < 0) return [];
  return [...gaps(draft, k), ...spoiled(draft, k), ...nameless(draft, k), ...otherLimbs(draft, k)];
}

const keep = { label: "it is right so" };
const mend = { label: "the file will be corrected" };

function gaps(draft: Draft, k: number): Doubt[] {
  const numbers = new Set<number>();
  const prefixes = new Set<string>();
  let width = 0;
  for (const { typed } of draft.cases) {
    const match = /^(\D*)(\d{1,6})(?:[ _./-]?[a-z]{1,5})?$/i.exec(typed);
    if (!match) continue;
    prefixes.add(match[1]!);
    width = Math.max(width, /^0/.test(match[2]!) ? match[2]!.length : 0);
    numbers.add(Number(match[2]));
  }
  if (prefixes.size !== 1 || numbers.size < 8) return [];
  const sorted = [...numbers].toSorted((a, b) => a - b);
  const span = sorted.at(-1)! - sorted[0]! + 1;
  if (span === numbers.size || numbers.size < span * 0.8) return [];
  const missing: string[] = [];
  for (let n = sorted[0]!; n < sorted.at(-1)!; n++)
    if (!numbers.has(n)) missing.push(`${[...prefixes][0]}${String(n).padStart(width, "0")}`);
  const shown = `${missing.slice(0, 12).join(", ")}${missing.length > 12 ? ` and ${missing.length - 12} more` : ""}`;
  return [
    {
      id: questionId(draft.names[k]!, "gap", shown),
      column: draft.names[k]!,
      text: shown,
      asks: `the sequence of numbers has ${missing.length === 1 ? "a gap" : `${missing.length} gaps`} (${shown}): consecutive cases, or some left out?`,
      rows: [],
      blocks: [],
      choices: [{ label: "never given" }, { label: "left out on purpose" }, { label: "missing, will be added" }],
    },
  ];
}

/** "1E5" becomes 100000 and "007" becomes 7 when a sheet program takes a study number for a number. */
function spoiled(draft: Draft, k: number): Doubt[] {
  const zeros = draft.cases.filter(({ typed }) => /^0\d+$/.test(typed)).length;
  const width = Math.max(
    0,
    ...draft.cases.filter(({ typed }) => /^0\d+$/.test(typed)).map(({ typed }) => typed.length),
  );
  return draft.cases.flatMap(({ typed }, line): Doubt[] => {
    const scientific = /^\d(?:[.,]\d+)?E[+-]?\d+$/i.test(typed);
    const round = /^\d0{4,}$/.test(typed) && draft.cases.length < Number(typed);
    const date =
      draft.lines[line]!.row.cells[draft.positions[k]!]?.date !== undefined ||
      /^\d{1,2}-(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)$/i.test(typed);
    const short = zeros > 0 && /^[1-9]\d*$/.test(typed) && typed.length < width;
    if (!scientific && !round && !date && !short) return [];
    const asks = short
      ? `"${typed}" is shorter than its neighbours: was it ${typed.padStart(width, "0")}?`
      : `"${typed}" looks like a study number that the sheet program changed: what was it?`;
    return [
      {
        id: questionId(draft.names[k]!, "changed number", typed),
        column: draft.names[k]!,
        text: typed,
        asks,
        rows: [draft.lines[line]!.row.number],
        blocks: [],
        choices: [keep, mend],
      },
    ];
  });
}

function nameless(draft: Draft, k: number): Doubt[] {
  const rows = draft.cases.flatMap(({ typed }, line) => (typed === "" ? [draft.lines[line]!.row.number] : []));
  if (rows.length === 0) return [];
  return [
    {
      id: questionId(draft.names[k]!, "no number", ""),
      column: draft.names[k]!,
      text: "",
      asks: "these rows have values but no case number: are they cases of their own?",
      rows,
      blocks: [],
      choices: [{ label: "cases of their own" }, mend],
    },
  ];
}

const anotherChild = "another child";

/** "12bis", "20 other side" beside 12 and 20: the other limb of the child, or a child of its own. */
function otherLimbs(draft: Draft, k: number): Doubt[] {
  const known = new Set(draft.cases.map(({ typed }) => typed.toLowerCase()));
  return draft.cases.flatMap(({ typed }, line): Doubt[] => {
    const base = wordSuffix.exec(typed)?.[1];
    if (base === undefined || !known.has(base.toLowerCase())) return [];
    return [
      {
        id: otherLimbId(draft.names[k]!, typed),
        column: draft.names[k]!,
        text: typed,
        asks: `"${typed}" stands beside "${base}": the other limb of the same child?`,
        rows: [draft.lines[line]!.row.number],
        blocks: [],
        choices: [{ label: "the same child" }, { label: anotherChild }],
      },
    ];
  });
}

function otherLimbId(name: string, typed: string): string {
  return questionId(name, "other limb", typed);
}

/** Numbers that answers give to a child of its own. */
export function numbersApart(name: string | undefined, answers: Answers): ReadonlySet<string> {
  const start = name === undefined ? undefined : `${otherLimbId(name, "")} | `;
  const apart = Object.entries(answers).filter(
    ([id, answer]) => start && id.startsWith(start) && answer === anotherChild,
  );
  return new Set(apart.map(([id]) => id.slice(start!.length)));
}
