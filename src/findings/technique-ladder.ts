import type { LedgerCase } from "../ledger/types.js";
import { techniques } from "../plan/types.js";
import type { LadderRow } from "./types.js";

/** For each grade the ways from the first technique to the final one, shortest first. */
export function techniqueLadder(cases: readonly LedgerCase[], grades: readonly string[]): LadderRow[] {
  return grades.map((grade) => {
    const within = cases.filter((one) => one.grade === grade);
    const paths = techniques.flatMap((first) =>
      techniques.map((final) => ({
        first,
        final,
        cases: within.filter((one) => one.firstTechnique === first && one.finalTechnique === final).map(({ id }) => id),
      })),
    );
    return { grade, paths: paths.filter((path) => path.cases.length > 0) };
  });
}
