import { mantelHaenszel } from "../../stats/strata/mantel-haenszel.js";
import { newcombe } from "../../stats/two-groups/newcombe.js";
import type { Count, Interval, NotEstimable } from "../../stats/types.js";
import type { CardRow, PaperCard } from "./paper-card.js";

export interface NamedCount extends Count {
  readonly name: string;
}

/** The first two techniques of a card, all grades together and within grades. */
export interface CardTechniques {
  readonly first: NamedCount;
  readonly second: NamedCount;
  /** First less second, a fraction. */
  readonly crude: { readonly difference: number; readonly interval: Interval };
  readonly within: { readonly difference: number; readonly interval: Interval | null } | NotEstimable;
  /** Grades treated one way only. */
  readonly oneWay: readonly string[];
}

/** What a paper's own counts by technique say: crude, and over the grades in which both were used. */
export function cardTechniques({ rows }: PaperCard, level: number): CardTechniques | NotEstimable {
  const names = [...new Set(rows.map(({ technique }) => technique))].filter((name) => name !== "");
  if (names.length < 2) return { estimate: null, because: "the card does not tell two techniques apart" };
  if (rows.some(({ successes, cases }) => successes === null || cases === null))
    return { estimate: null, because: "counts are not stated" };
  const [first, second] = [names[0]!, names[1]!].map((name) => ({ name, ...countOf(rows, name) }));
  if (first!.trials === 0 || second!.trials === 0)
    return { estimate: null, because: "one of the techniques has no case" };
  const grades = [...new Set(rows.map(({ grade }) => grade))];
  const strata = grades.map((grade) => {
    const own = rows.filter((row) => row.grade === grade);
    return { grade, first: countOf(own, first!.name), second: countOf(own, second!.name) };
  });
  const both = strata.filter((one) => one.first.trials > 0 && one.second.trials > 0);
  const { estimate, interval } = newcombe({ first: first!, second: second! }, { level });
  return {
    first: first!,
    second: second!,
    crude: { difference: estimate, interval },
    within: withinGrades(both, level),
    oneWay: strata.filter((one) => !both.includes(one)).map(({ grade }) => grade),
  };
}

function withinGrades(
  both: readonly { readonly first: Count; readonly second: Count }[],
  level: number,
): CardTechniques["within"] {
  if (both.length === 0) return { estimate: null, because: "in no grade were both techniques used" };
  const { difference, differenceInterval } = mantelHaenszel(both, { level });
  if (difference === null) return { estimate: null, because: "the grades leave no difference to estimate" };
  const { low, high } = differenceInterval;
  return { difference, interval: low === null || high === null ? null : { low, high } };
}

function countOf(rows: readonly CardRow[], name: string): Count {
  const own = rows.filter(({ technique }) => technique === name);
  const sum = (what: "successes" | "cases"): number => own.reduce((total, row) => total + row[what]!, 0);
  return { successes: sum("successes"), trials: sum("cases") };
}
