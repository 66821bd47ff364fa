import { cellLook } from "./cell-look.js";

/** Why a line below the heading is no case; undefined for a case. */
export interface LineContext {
  readonly heading: readonly (readonly string[])[];
  /** Index of the column that names cases, if any. */
  readonly idColumn: number | undefined;
  /** Number of named columns. */
  readonly width: number;
}

const loose = "figures without a case, as totals are";
const single = "single entry without a case number";
const beneath = "below the end of the cases";
/** Reasons that a person should confirm. */
export const doubtful: ReadonlySet<string> = new Set([loose, single, beneath]);

const total =
  /^(grand |sub ?-?)?(totals?|sum|means?|average|avg|median|sd|s\.d\.|std\.?|st\.? ?dev\.?|standard deviation|min(imum)?|max(imum)?|range|count|number|n ?=.*|n|%|per ?cent(age)?|overall|all( cases| patients| limbs)?|summe|gesamt|mittelwert|durchschnitt|schnitt|moyenne|somme|promedio|media|totale|iqr|quartiles?)\b[^a-z]*( .{0,30})?$/i;
const remark =
  /^([*†‡§#•]|note|nb\b|n\.b\.|key\b|legend|source|abbrev|footnote|updated|version|red\b|green\b|yellow\b|\w+ ?= ?\w+)/i;

/** Sorts the lines below the heading in reading order: the reason why each is no case, or undefined. */
export function sortLines(lines: readonly (readonly string[])[], context: LineContext): (string | undefined)[] {
  const shapes = commonShapes(lines, context.idColumn);
  let below = false;
  let blanks = 0;
  return lines.map((line) => {
    const why = reasonAgainst(line, context, shapes, below || blanks > 1);
    blanks = why === "blank line" ? blanks + 1 : 0;
    if (why !== undefined && why !== "blank line" && why !== "heading repeated") below = true;
    if (why === undefined) below = false;
    return why;
  });
}

function reasonAgainst(
  line: readonly string[],
  context: LineContext,
  shapes: ReadonlySet<string>,
  below: boolean,
): string | undefined {
  const id = context.idColumn === undefined ? "" : (line[context.idColumn] ?? "");
  if (context.heading.some((heading) => repeats(line, heading))) return "heading repeated";
  if (id !== "" && (looksLikeId(id) || shapes.has(shape(id)))) return undefined;
  const filled = line.flatMap((text, c) => (text === "" ? [] : [c]));
  if (filled.length === 0) return "blank line";
  const lead = line[filled[0]!]!;
  const rest = filled.slice(1).map((c) => cellLook(line[c]!));
  const figures = rest.filter((look) => look === "number" || look === "code").length;
  if (total.test(lead) && figures >= rest.length * 0.7) return "total or average, not a case";
  const few = filled.length <= Math.max(1, context.width * 0.25) && context.width > 2;
  if (few && remark.test(lead)) return "note, not a case";
  if (few && filled.length === 1 && ["sentence", "word"].includes(cellLook(lead)))
    return "note or sub-heading, not a case";
  if (context.idColumn !== undefined && id === "") {
    const half = filled.length <= context.width * 0.5;
    if (rest.length === figures && half && cellLook(lead) === "number") return loose;
    if (few && filled.length === 1) return single;
  }
  return below && filled.length <= context.width * 0.5 ? beneath : undefined;
}

function repeats(line: readonly string[], heading: readonly string[]): boolean {
  let names = 0;
  let same = 0;
  for (let c = 0; c < heading.length; c++) {
    if (heading[c] === "") continue;
    names++;
    if (line[c] === heading[c]) same++;
  }
  return names > 1 && same > names * 0.6;
}

/** Letters and digits of a case number as a pattern: "H020b" gives "A9A". */
export function shape(text: string): string {
  return text.replace(/\p{L}+/gu, "A").replace(/\d+/g, "9");
}

function looksLikeId(text: string): boolean {
  return /\d/.test(text) && text.length <= 20 && text.split(" ").length <= 2 && !/[=:*]/.test(text);
}

/** Patterns of case numbers that at least two lines, and one in ten, share. */
function commonShapes(lines: readonly (readonly string[])[], idColumn: number | undefined): ReadonlySet<string> {
  const counts = new Map<string, number>();
  let named = 0;
  if (idColumn === undefined) return new Set();
  for (const line of lines) {
    const text = line[idColumn] ?? "";
    if (text === "" || total.test(text)) continue;
    named++;
    counts.set(shape(text), (counts.get(shape(text)) ?? 0) + 1);
  }
  return new Set([...counts].filter(([, count]) => count >= 2 && count >= named / 10).map(([key]) => key));
}
