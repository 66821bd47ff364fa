import type { FleissResult } from "../../stats/agreement/fleiss-kappa.js";
import type { AgreementModel } from "../../stats/agreement-size/model.js";
import { imagesForKappa } from "../../stats/agreement-size/images-for-kappa.js";
import { simulateKappaWidth, type SimulatedKappaWidth } from "../../stats/agreement-size/simulate-kappa-width.js";
import type { NotEstimable } from "../../stats/types.js";

const widths = [0.3, 0.2, 0.1] as const;
/** Numbers of observers that a plan is made for. */
export const plannedRaters = [2, 3, 4, 6] as const;
const tried = 0.2;
const STUDIES = 200;

export interface SizeFindings {
  readonly estimate: number;
  /** Shares of the grades used, by the readings at hand. */
  readonly shares: readonly number[];
  readonly cells: readonly { readonly raters: number; readonly width: number; readonly images: number }[];
  /** For one width, what simulated studies of that size gave. */
  readonly simulated: readonly { readonly width: number; readonly found: SimulatedKappaWidth }[];
}

/**
 * Radiographs by number of raters for intervals of unweighted kappa of three widths, planned for a study like the one at
 * hand, and the formula tried on simulated studies.
 */
export function planFindings(
  fleiss: FleissResult,
  readings: readonly (readonly (number | null)[])[],
  options: { readonly level: number; readonly seed: number },
): SizeFindings | NotEstimable {
  if (fleiss.estimate === null) return { estimate: null, because: fleiss.because };
  const found = readings.flat().filter((grade) => grade !== null);
  const places = [...new Set(found)].toSorted((a, b) => a - b);
  const shares = places.map((place) => found.filter((grade) => grade === place).length / found.length);
  const kappa = Math.min(0.95, Math.max(0, fleiss.estimate));
  const model = (count: number): AgreementModel => ({ shares, kappa, raters: count });
  const { level, seed } = options;
  const cells = plannedRaters.flatMap((count) =>
    widths.map((width) => ({ raters: count, width, images: imagesForKappa(model(count), { width, level }).images })),
  );
  const simulated = cells
    .filter(({ width, images }) => width === tried && images >= 10)
    .map(({ raters: count, width, images }) => ({
      width,
      found: simulateKappaWidth(model(count), { images, level, seed, studies: STUDIES }),
    }));
  return { estimate: kappa, shares, cells, simulated };
}
