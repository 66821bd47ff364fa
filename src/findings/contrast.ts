import type { LedgerCase } from "../ledger/types.js";
import type { Judgement } from "../plan/judge.js";
import { conditionalOddsRatio } from "../stats/two-groups/conditional-odds-ratio.js";
import { fisherExact } from "../stats/two-groups/fisher-exact.js";
import { newcombe } from "../stats/two-groups/newcombe.js";
import { woolf } from "../stats/two-groups/woolf.js";
import { rate, type RateOptions } from "./rate.js";
import type { Contrast, Rate } from "./types.js";

/** Closed against open, by the technique tried first, in one set of cases. */
export function contrast(
  cases: readonly LedgerCase[],
  judgementOf: (one: LedgerCase) => Judgement | undefined,
  options: RateOptions,
): Contrast {
  const closed = rate(
    cases.filter(({ firstTechnique }) => firstTechnique === "closed"),
    judgementOf,
    options,
  );
  const open = rate(
    cases.filter(({ firstTechnique }) => firstTechnique === "open"),
    judgementOf,
    options,
  );
  const because = notComparable(closed, open);
  if (because !== undefined)
    return {
      closed,
      open,
      difference: { estimate: null, because },
      oddsRatio: { estimate: null, because },
      fisher: null,
    };
  const groups = { first: countOf(closed), second: countOf(open) };
  const { estimate, interval } = newcombe(groups, { level: options.level });
  const { pointProbability, doubled, midP } = fisherExact(groups);
  const odds = conditionalOddsRatio(groups, { level: options.level });
  return {
    closed,
    open,
    difference: { estimate, newcombe: interval, newcombe50: newcombe(groups, { level: 0.5 }).interval },
    oddsRatio:
      odds.estimate === null
        ? { estimate: null, because: odds.because }
        : { sample: woolf(groups).estimate, conditional: odds.estimate, exact: odds.interval },
    fisher: { pointProbability, doubled, midP },
  };
}

/** Successes of trials, without the rows. */
export function countOf({ count: { successes, trials } }: Rate): {
  readonly successes: number;
  readonly trials: number;
} {
  return { successes, trials };
}

function notComparable(closed: Rate, open: Rate): string | undefined {
  if (closed.bounds !== undefined || open.bounds !== undefined) return "questions are open on some of these cases";
  if (closed.count.trials === 0 && open.count.trials === 0) return "no case was treated closed or open first";
  if (closed.count.trials === 0) return "no case was treated closed first";
  return open.count.trials === 0 ? "no case was treated open first" : undefined;
}
