import { cellLook } from "./cell-look.js";
import { remarkLead, repeatsHeading, shape, totalLead } from "./line-shapes.js";

/** Why a line below the heading is no case; undefined for a case. */
export interface LineContext {
  readonly heading: readonly (readonly string[])[];
  /** Index of the column that names cases, if any. */
  readonly idColumn: number | undefined;
  /** Patterns of the case numbers. */
  readonly shapes: ReadonlySet<string>;
  /** Number of named columns. */
  readonly width: number;
}

const pageFooter = /^(page|seite|p\.|pagina|página) ?\d+\b|^\d+ (of|von|\/) \d+$|\bprinted\b/i;
const loose = "figures without a case, as totals are";
const single = "single entry without a case number";
const beneath = "below the end of the cases";
/** Reasons that a person should confirm. */
export const doubtful: ReadonlySet<string> = new Set([loose, single, beneath]);

/** Sorts the lines below the heading in reading order: the reason why each is no case, or undefined. */
export function sortLines(lines: readonly (readonly string[])[], context: LineContext): (string | undefined)[] {
  const words = wordColumns(lines, context.idColumn);
  let below = false;
  return lines.map((line) => {
    const why = reasonAgainst(line, { ...context, words }, below);
    if (why !== undefined && why !== "heading repeated") below = true;
    if (why === undefined) below = false;
    return why;
  });
}

function reasonAgainst(
  line: readonly string[],
  context: LineContext & { readonly words: readonly number[] },
  below: boolean,
): string | undefined {
  const id = context.idColumn === undefined ? "" : (line[context.idColumn] ?? "");
  if (context.heading.some((heading) => repeatsHeading(line, heading))) return "heading repeated";
  const known = id !== "" && context.shapes.has(shape(id));
  if (known) return undefined;
  const filled = line.flatMap((text, c) => (text === "" ? [] : [c]));
  if (filled.length === 0) return "blank line";
  const lead = line[filled[0]!]!;
  const rest = filled.slice(1).map((c) => cellLook(line[c]!));
  const figures = rest.filter((look) => look === "number" || look === "code").length;
  if (totalLead.test(lead) && !/= ?\p{L}/u.test(lead) && figures >= rest.length * 0.7)
    return "total or average, not a case";
  const alone = filled.length === 1 && context.width > 2;
  if (pageFooter.test(lead) && filled.length <= 2) return "page number, not a case";
  if (id !== "" && looksLikeId(id)) {
    if (context.shapes.size === 0) return undefined;
    // Another pattern of number, and nothing where the others have grade, side or outcome.
    const wordless = context.words.length > 1 && context.words.every((c) => (line[c] ?? "") === "");
    return alone || (wordless && filled.length <= context.width * 0.5) ? single : undefined;
  }
  const few = filled.length <= Math.max(1, context.width * 0.25) && context.width > 2;
  if (few && remarkLead.test(lead)) return "note, not a case";
  if (few && filled.length === 1 && ["sentence", "word"].includes(cellLook(lead)))
    return "note or sub-heading, not a case";
  if (context.idColumn !== undefined && id === "") {
    const wordless = context.words.length > 0 && context.words.every((c) => !wordy(line[c] ?? ""));
    const half = filled.length <= context.width * 0.5;
    if (rest.length === figures && (half || wordless) && cellLook(lead) === "number") return loose;
    if (few && filled.length === 1) return single;
  }
  return below && filled.length <= context.width * 0.5 ? beneath : undefined;
}

/** Columns that hold words or codes in most lines, as grades and sides do: a line of totals leaves them empty. */
function wordColumns(lines: readonly (readonly string[])[], idColumn: number | undefined): number[] {
  const sample = lines.slice(0, 200);
  const width = Math.max(0, ...sample.map((line) => line.length));
  return Array.from({ length: width }, (_, c) => c).filter((c) => {
    if (c === idColumn) return false;
    const worded = sample.filter((line) => wordy(line[c] ?? "")).length;
    return worded > sample.length * 0.6;
  });
}

function wordy(text: string): boolean {
  const look = cellLook(text);
  return look === "word" || look === "code";
}

function looksLikeId(text: string): boolean {
  return /\d/.test(text) && text.length <= 20 && text.split(" ").length <= 2 && !/[=:*]/.test(text);
}
