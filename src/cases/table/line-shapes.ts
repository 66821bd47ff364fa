/** First cell of a line of totals. */
export const totalLead =
  /^(grand |sub ?-?)?(totals?|sum|means?|average|avg|median|sd|s\.d\.|std\.?|st\.? ?dev\.?|standard deviation|min(imum)?|max(imum)?|range|count|number|n ?= ?\d.*|n|%|per ?cent(age)?|overall|all( cases| patients| limbs)?|summe|gesamt|mittelwert|durchschnitt|schnitt|moyenne|somme|promedio|media|totale|iqr|quartiles?)(?![a-z])[^a-z]*( .{0,30})?$/i;
/** First cell of a remark under the table. */
export const remarkLead =
  /^([*†‡§#•]|note|nb\b|n\.b\.|key\b|legend|source|abbrev|footnote|updated|version|red\b|green\b|yellow\b|\w+ ?= ?\w+)/i;

/** Letters and digits of a case number as a pattern: "H020b" gives "A9A". */
export function shape(text: string): string {
  return text.replace(/\p{L}+/gu, "A").replace(/\d+/g, "9");
}

/** Whether a line repeats a row of the heading, as a new printed page does. */
export function repeatsHeading(line: readonly string[], heading: readonly string[]): boolean {
  let names = 0;
  let same = 0;
  for (let c = 0; c < heading.length; c++) {
    if (heading[c] === "") continue;
    names++;
    if (line[c] === heading[c]) same++;
  }
  return names > 1 && same > names * 0.6;
}

/** The lines before the first blank one, when they are enough to know the pattern of the case numbers by. */
function firstBlock(lines: readonly (readonly string[])[]): readonly (readonly string[])[] {
  const end = lines.findIndex((line) => line.every((text) => text === ""));
  return end >= 3 ? lines.slice(0, end) : lines;
}

/** Patterns of case numbers that at least two of the first lines, and one in ten, share. */
export function commonShapes(lines: readonly (readonly string[])[], idColumn: number | undefined): ReadonlySet<string> {
  const counts = new Map<string, number>();
  let named = 0;
  if (idColumn === undefined) return new Set();
  for (const line of firstBlock(lines)) {
    const text = line[idColumn] ?? "";
    if (text === "" || totalLead.test(text) || line.filter((each) => each !== "").length < 2) continue;
    named++;
    const key = shape(text);
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return new Set([...counts].filter(([, count]) => count >= 2 && count >= named / 10).map(([key]) => key));
}
