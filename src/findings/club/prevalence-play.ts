import { cohenKappa, type KappaResult } from "../../stats/agreement/cohen-kappa.js";
import type { BandedRate } from "../series/series-findings.js";
import { bandedRate } from "./banded-rate.js";

/** Two invented observers who agree on 57 of 60 radiographs, however common the high grade is. */
export interface PrevalencePlay {
  /** Radiographs that both call high. */
  readonly bothHigh: number;
  readonly bothLow: number;
  readonly differ: number;
  readonly agreement: BandedRate;
  readonly kappa: KappaResult;
}

export const radiographs = 60;
const [firstOnly, secondOnly] = [1, 2];
export const mostBothHigh = radiographs - firstOnly - secondOnly;

/**
 * @param bothHigh integer from 0 to `mostBothHigh`
 * @throws RangeError when it is not
 * @see Feinstein and Cicchetti 1990, J Clin Epidemiol 43:543-549 (high agreement, low kappa)
 */
export function prevalencePlay(bothHigh: number, level: number): PrevalencePlay {
  if (!(Number.isInteger(bothHigh) && bothHigh >= 0 && bothHigh <= mostBothHigh))
    throw new RangeError(`prevalencePlay: bothHigh must be an integer from 0 to ${mostBothHigh}, got ${bothHigh}`);
  const table = [
    [bothHigh, firstOnly],
    [secondOnly, mostBothHigh - bothHigh],
  ];
  return {
    bothHigh,
    bothLow: mostBothHigh - bothHigh,
    differ: firstOnly + secondOnly,
    agreement: bandedRate(mostBothHigh, radiographs, level),
    kappa: cohenKappa(table, { level }),
  };
}
