import { cellLook, type Look } from "./cell-look.js";
import { headingRole } from "./heading-words.js";
import { remarkLead, repeatsHeading, shape, totalLead } from "./line-shapes.js";

/** A table below the cases: its lines as indices, the first of which names its columns where `headed`. */
export interface SecondTable {
  readonly lines: readonly number[];
  readonly headed: boolean;
}

export interface CaseLines {
  readonly heading: readonly (readonly string[])[];
  readonly idColumn: number | undefined;
  /** Patterns of the case numbers. */
  readonly shapes: ReadonlySet<string>;
  /** Number of named columns. */
  readonly width: number;
}

/**
 * Finds other tables below the cases: counts, a key to the codes, excluded patients. Such a table begins with names of
 * columns, or after a blank line with lines that look like no case, and ends where lines look like cases again.
 */
export function secondTables(lines: readonly (readonly string[])[], cases: CaseLines): SecondTable[] {
  const looks = usualLooks(lines);
  const found: { lines: number[]; headed: boolean }[] = [];
  let open: { lines: number[]; headed: boolean } | undefined;
  let blanks = 0;
  let seen = 0;
  for (let i = 0; i < lines.length; i++) {
    const line = lines[i]!;
    const known = hasCaseNumber(line, cases);
    if (!open && known && seen > 0 && blanks === 0) {
      seen++;
      continue;
    }
    const filled = line.flatMap((text, c) => (text === "" ? [] : [c]));
    if (filled.length === 0) {
      blanks++;
      continue;
    }
    const fits = known && likeCases(line, filled, looks, cases);
    if (cases.heading.some((heading) => repeatsHeading(line, heading))) open = undefined;
    else if (
      seen > 0 &&
      (namesColumns(line, filled, known, lines, i, looks) || (blanks > 0 && leadNames(line, filled, i, looks, cases)))
    ) {
      open = { lines: [i], headed: true };
      found.push(open);
    } else if (open && blanks > 0 && (fits || (cases.idColumn === undefined && likeCases(line, filled, looks, cases))))
      open = undefined;
    // A single cell is a remark beside the table.
    else if (open && filled.length > 1) open.lines.push(i);
    else if (open) continue;
    else if (seen > 0 && blanks > 0 && standsApart(line, filled, looks, cases)) {
      open = { lines: [i], headed: false };
      found.push(open);
    }
    if (!open) seen++;
    // A title stands between the blank line and its table.
    if (open || filled.length > 1 || known) blanks = 0;
  }
  return found.filter(({ lines: held }) => held.length > 1);
}

function hasCaseNumber(line: readonly string[], { idColumn, shapes }: CaseLines): boolean {
  const id = idColumn === undefined ? "" : (line[idColumn] ?? "");
  return id !== "" && shapes.has(shape(id)) && (/\d/.test(id) || !named(id));
}

const sample = 200;
const tableWords =
  /^(n|no\.?|%|code|codes|key|meaning|value|label|total|count|number|mean|median|sd|range|iqr|min|max|p|definition|explanation|abbreviation|category|variable|group|item|reason|why|rate|cases|patients|limbs|all|legend|kode|bedeutung|anzahl)$/i;

/** A line of names: words only, mostly words of headings, none a value of the cases above; and a line of its own below. */
function namesColumns(
  line: readonly string[],
  filled: readonly number[],
  known: boolean,
  lines: readonly (readonly string[])[],
  at: number,
  looks: Looks,
): boolean {
  if (known || filled.length < 2) return false;
  if (!filled.every((c) => line[c]!.length <= 60 && (wordy(line[c]!) || named(line[c]!)))) return false;
  if (filled.filter((c) => named(line[c]!)).length * 2 < filled.length) return false;
  if (filled.filter((c) => isValue(line[c]!, c, at, looks)).length * 2 >= filled.length) return false;
  const below = [lines[at + 1], lines[at + 2]].find((next) => next?.some((text) => text !== ""));
  if (!below) return false;
  const [from, to] = [filled[0]!, filled.at(-1)!];
  const held = below.flatMap((text, c) => (text === "" ? [] : [c]));
  return held.length > 1 && held.every((c) => c >= from && c <= to + 1);
}

/** Whether a text stands in its column elsewhere than in this line. */
function isValue(text: string, c: number, at: number, { values, lines }: Looks): boolean {
  return (values[c]?.get(text.toLowerCase()) ?? 0) > (at < lines ? 1 : 0);
}

/** After a blank line the first name is enough: "Grade, I, II, III, Total". */
function leadNames(
  line: readonly string[],
  filled: readonly number[],
  at: number,
  looks: Looks,
  cases: CaseLines,
): boolean {
  const lead = line[filled[0]!]!;
  if (filled.length < 2 || !named(lead) || totalLead.test(lead) || remarkLead.test(lead)) return false;
  return !isValue(lead, filled[0]!, at, looks) && !likeCases(line, filled, looks, cases);
}

function wordy(text: string): boolean {
  const look = cellLook(text);
  return (
    look === "word" || (look === "code" && !/^\d/.test(text) && !/^(y|n|yes|no|l|r|left|right|x|\?|-)$/i.test(text))
  );
}

function named(text: string): boolean {
  return tableWords.test(text) || headingRole(text) !== undefined;
}

interface Looks {
  /** Looks of each column that one in ten of the lines at least has. */
  readonly usual: readonly ReadonlySet<Look>[];
  /** How often each value, in lower case, stands in each column of the first lines. */
  readonly values: readonly ReadonlyMap<string, number>[];
  /** Number of first lines. */
  readonly lines: number;
}

/** What the columns hold in the first lines, up to the first blank one. */
function usualLooks(lines: readonly (readonly string[])[]): Looks {
  const end = lines.findIndex((line) => line.every((text) => text === ""));
  const first = lines.slice(0, Math.min(end >= 3 ? end : lines.length, sample));
  const width = Math.max(0, ...first.map((line) => line.length));
  const usual: Set<Look>[] = [];
  const values: Map<string, number>[] = [];
  for (let c = 0; c < width; c++) {
    const counts = new Map<Look, number>();
    values[c] = new Map();
    for (const line of first) {
      const look = cellLook(line[c] ?? "");
      counts.set(look, (counts.get(look) ?? 0) + 1);
      const value = (line[c] ?? "").toLowerCase();
      values[c]!.set(value, (values[c]!.get(value) ?? 0) + 1);
    }
    usual[c] = new Set([...counts].filter(([, count]) => count >= first.length / 10).map(([look]) => look));
  }
  return { usual, values, lines: first.length };
}

/** As many cells as a case has, most of them of the kind that their column holds. */
function likeCases(
  line: readonly string[],
  filled: readonly number[],
  { usual }: Looks,
  { width }: CaseLines,
): boolean {
  const fit = filled.filter((c) => usual[c]?.has(cellLook(line[c]!))).length;
  return filled.length > width * 0.5 && fit >= filled.length * 0.6;
}

/**
 * Few cells, side by side, of which at least half are of another kind than their column's. A case number speaks against it,
 * unless it is a bare number, as codes are too.
 */
function standsApart(line: readonly string[], filled: readonly number[], looks: Looks, cases: CaseLines): boolean {
  const lead = line[filled[0]!]!;
  if (totalLead.test(lead) || remarkLead.test(lead) || filled.length < 2) return false;
  if (hasCaseNumber(line, cases) && !/^\d+$/.test(line[cases.idColumn!]!)) return false;
  if (filled.length > Math.max(2, cases.width * 0.5) || filled.at(-1)! - filled[0]! > filled.length) return false;
  const fit = filled.filter((c) => looks.usual[c]?.has(cellLook(line[c]!))).length;
  return fit * 2 <= filled.length;
}
