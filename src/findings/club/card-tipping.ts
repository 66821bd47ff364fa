import type { NotEstimable } from "../../stats/types.js";
import type { CardTechniques } from "../series/card-techniques.js";
import { tipping, type Tipping } from "../tipping.js";

/**
 * A paper's techniques with its lost counted in every possible way. Papers seldom say how the lost were treated.
 * @param options.lost integer of at least 0
 * @param options.ofFirst how many of them by the first technique; null: the share that the first has among the followed
 */
export function cardTipping(
  { first, second }: CardTechniques,
  { lost, ofFirst, level }: { readonly lost: number; readonly ofFirst: number | null; readonly level: number },
): Tipping | NotEstimable {
  const share = Math.round((lost * first.trials) / (first.trials + second.trials));
  const lostFirst = Math.min(lost, ofFirst ?? share);
  return tipping({ ...first, lost: lostFirst }, { ...second, lost: lost - lostFirst }, level);
}
