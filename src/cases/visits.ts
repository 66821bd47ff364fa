/** One repeated measure in wide form: "Elev 3m, Elev 6m, Elev last". */
export interface Visits {
  readonly measure: string;
  /** Columns by time, the last review (no time of its own) at the end. */
  readonly visits: readonly { readonly column: string; readonly months: number | "last" }[];
}

const time =
  /^(.*?)[ _:(-]*(?:at )?\b(?:(\d{1,3}) ?(m|mo|mths?|months?|w|wks?|weeks?|y|yrs?|years?)|(\d{1,2})\/(12)|(last|final|latest)(?: (?:review|visit|fu))?)\)?$/i;
const factors: Readonly<Record<string, number>> = { m: 1, w: 12 / 52, y: 12 };

/** Finds columns that repeat one measure at several times, by their headings. */
export function findVisits(names: readonly string[]): Visits[] {
  const found = new Map<string, { measure: string; visits: { column: string; months: number | "last" }[] }>();
  for (const column of names) {
    const match = time.exec(column);
    const measure = match?.[1]?.trim() ?? "";
    if (!match || measure === "") continue;
    const months = match[6]
      ? ("last" as const)
      : Number(match[2] ?? match[4]) * (match[3] ? factors[match[3][0]!.toLowerCase()]! : 1);
    const group = found.get(measure.toLowerCase()) ?? { measure, visits: [] };
    group.visits.push({ column, months });
    found.set(measure.toLowerCase(), group);
  }
  return [...found.values()]
    .filter(({ visits }) => visits.length > 1 && visits.some(({ months }) => months !== "last"))
    .map(({ measure, visits }) => ({ measure, visits: visits.toSorted((a, b) => order(a.months) - order(b.months)) }));
}

function order(months: number | "last"): number {
  return months === "last" ? Infinity : months;
}
