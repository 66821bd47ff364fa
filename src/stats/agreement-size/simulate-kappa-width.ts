import { random } from "../../numeric/random.js";
import { fleissKappa } from "../agreement/fleiss-kappa.js";
import { requireLevel, requireOptions } from "../guards.js";
import { requireModel, type AgreementModel } from "./model.js";

export interface SimulatedKappaWidth {
  readonly method: "studies simulated under the model";
  readonly model: AgreementModel;
  readonly images: number;
  readonly level: number;
  readonly studies: number;
  readonly seed: number;
  /** Mean full width of the interval of Fleiss' kappa. */
  readonly meanWidth: number;
  /** Width that nine of ten studies stay below. */
  readonly ninthWidth: number;
  /** Share of intervals that hold the planned kappa. */
  readonly coverage: number;
  /** Studies without an interval (one grade used by all), left out. */
  readonly undefinedStudies: number;
}

/**
 * What studies of so many radiographs would give, drawn under the model: the width that the formula promises, and whether
 * the intervals hold.
 *
 * @param model expected shares of the grades, kappa and number of raters
 * @param options.images radiographs of a study, at least 2
 * @param options.level coverage in (0, 1); default 0.95
 * @param options.studies at least 100; default 1,000
 * @param options.seed integer, 0 to 2^32 - 1; default 1
 * @throws RangeError when an argument is out of range or no study gave an interval; TypeError for unknown options
 * @example simulateKappaWidth({ shares: [0.5, 0.5], kappa: 0.6, raters: 2 }, { images: 50, studies: 100 }).undefinedStudies // => 0
 */
export function simulateKappaWidth(
  model: AgreementModel,
  options: { readonly images: number; readonly level?: number; readonly studies?: number; readonly seed?: number },
): SimulatedKappaWidth {
  requireOptions("simulateKappaWidth", options, ["images", "level", "studies", "seed"]);
  const { images, level = 0.95, studies = 1000, seed = 1 } = options;
  requireLevel("simulateKappaWidth", level);
  requireModel("simulateKappaWidth", model);
  if (!(Number.isSafeInteger(images) && images >= 2))
    throw new RangeError(`simulateKappaWidth: images must be an integer of at least 2, got ${images}`);
  if (!(Number.isSafeInteger(studies) && studies >= 100))
    throw new RangeError(`simulateKappaWidth: studies must be an integer of at least 100, got ${studies}`);
  const stream = random(seed);
  const widths: number[] = [];
  let covered = 0;
  for (let study = 0; study < studies; study++) {
    const readings = drawReadings(model, images, stream.uniform);
    const { interval } = { interval: null, ...fleissKappa({ grades: model.shares.length, readings }, { level }) };
    if (interval === null || !("low" in interval)) continue;
    widths.push(interval.high - interval.low);
    if (interval.low <= model.kappa && model.kappa <= interval.high) covered++;
  }
  if (widths.length === 0)
    throw new RangeError("simulateKappaWidth: no simulated study gave an interval; plan more radiographs");
  widths.sort((a, b) => a - b);
  return {
    method: "studies simulated under the model",
    model,
    images,
    level,
    studies,
    seed,
    meanWidth: widths.reduce((sum, width) => sum + width, 0) / widths.length,
    ninthWidth: widths[Math.min(widths.length - 1, Math.ceil(0.9 * widths.length) - 1)]!,
    coverage: covered / widths.length,
    undefinedStudies: studies - widths.length,
  };
}

/** Readings of one study under the model: one row a radiograph, one column a rater. */
export function drawReadings(
  { shares, kappa, raters }: AgreementModel,
  images: number,
  uniform: () => number,
): number[][] {
  const know = Math.sqrt(kappa);
  const grade = (): number => {
    let left = uniform();
    for (let k = 0; k < shares.length - 1; k++) {
      left -= shares[k]!;
      if (left < 0) return k;
    }
    return shares.length - 1;
  };
  return Array.from({ length: images }, () => {
    const truth = grade();
    return Array.from({ length: raters }, () => (uniform() < know ? truth : grade()));
  });
}
