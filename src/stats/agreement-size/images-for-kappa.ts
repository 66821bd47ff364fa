import { normalQuantile } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import { requireModel, requireWidth, type AgreementModel } from "./model.js";

export interface ImagesForKappa {
  readonly method: "large-sample variance of Fleiss' kappa under the model";
  readonly model: AgreementModel;
  readonly level: number;
  readonly width: number;
  /** Radiographs, rounded up. */
  readonly images: number;
  /** Standard deviation of the influence of one radiograph: standard error times sqrt(radiographs). */
  readonly spread: number;
}

/**
 * Radiographs needed so that the interval of unweighted kappa, pooled over the raters, has a wanted width.
 *
 * The influence of a radiograph on Fleiss' kappa is averaged exactly over all ways to grade it under the model.
 *
 * @param model expected shares of the grades, kappa and number of raters
 * @param options.width wanted full width of the interval, in (0, 1)
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when an argument is out of range; TypeError for unknown options
 * @see Gwet 2008, Br J Math Stat Psychol 61:29-48, for the influence; the model is the usual mixture of knowing and guessing
 * @example imagesForKappa({ shares: [0.5, 0.5], kappa: 0, raters: 2 }, { width: 0.4 }).images // => 97
 */
export function imagesForKappa(
  model: AgreementModel,
  options: { readonly width: number; readonly level?: number },
): ImagesForKappa {
  requireOptions("imagesForKappa", options, ["width", "level"]);
  const { width, level = 0.95 } = options;
  requireLevel("imagesForKappa", level);
  requireWidth("imagesForKappa", width);
  requireModel("imagesForKappa", model);
  const spread = Math.sqrt(influenceVariance(model));
  const z = normalQuantile((1 + level) / 2);
  // At least 2: one radiograph gives no interval.
  const images = Math.max(2, Math.ceil(((2 * z * spread) / width) ** 2 - 1e-9));
  return { method: "large-sample variance of Fleiss' kappa under the model", model, level, width, images, spread };
}

function influenceVariance({ shares, kappa, raters }: AgreementModel): number {
  const chance = shares.reduce((sum, share) => sum + share ** 2, 0);
  const know = Math.sqrt(kappa);
  let variance = 0;
  eachProfile(shares.length, raters, (counts, orders) => {
    // Probability of these counts: over the true grade, raters being independent given it.
    const likely = shares.reduce((sum, share, truth) => {
      const each = counts.reduce(
        (product, count, grade) => product * ((grade === truth ? know : 0) + (1 - know) * shares[grade]!) ** count,
        1,
      );
      return sum + share * each;
    }, 0);
    const alike = counts.reduce((sum, count) => sum + count * (count - 1), 0) / (raters * (raters - 1));
    const own = counts.reduce((sum, count, grade) => sum + (count / raters) * shares[grade]!, 0);
    const influence = (alike - chance) / (1 - chance) - (2 * (1 - kappa) * (own - chance)) / (1 - chance) - kappa;
    variance += orders * likely * influence ** 2;
  });
  return variance;
}

/** Every way to spread raters over grades, with the number of orders that give it. */
function eachProfile(grades: number, raters: number, visit: (counts: readonly number[], orders: number) => void): void {
  const counts = new Array<number>(grades).fill(0);
  const place = (grade: number, left: number, orders: number): void => {
    if (grade === grades - 1) {
      counts[grade] = left;
      visit(counts, orders);
      return;
    }
    let ways = 1;
    for (let count = 0; count <= left; count++) {
      counts[grade] = count;
      place(grade + 1, left - count, orders * ways);
      ways = (ways * (left - count)) / (count + 1);
    }
  };
  place(0, raters, 1);
}
