import { counted, decimalText, levelText, percentText, pointsText } from "../../report/number-text.js";
import { imagesForIcc } from "../../stats/agreement-size/images-for-icc.js";
import { imagesForKappa } from "../../stats/agreement-size/images-for-kappa.js";
import { simulateKappaWidth } from "../../stats/agreement-size/simulate-kappa-width.js";
import { casesForWidth } from "../../stats/one-proportion/cases-for-width.js";
import { consecutiveSuccesses } from "../../stats/one-proportion/consecutive-successes.js";
import { InputError } from "../input-error.js";
import type { SizeKind } from "./size-kinds.js";

export interface SizePlan {
  readonly width: number;
  readonly raters: number;
  /** Weights of the grades. */
  readonly shares: readonly number[];
  readonly level: number;
  readonly simulate?: true;
  readonly seed: number;
}

export interface SizeAnalysis {
  readonly result: object;
  readonly text: string;
}

/** @throws InputError or RangeError when the value is out of range */
export function analyseSize(what: SizeKind, value: string, plan: SizePlan): SizeAnalysis {
  const expected = value.trim() === "" ? NaN : Number(value);
  if (!Number.isFinite(expected)) throw new InputError(`size: the value must be a number, got "${value.trim()}"`);
  return { rate, free, kappa, icc }[what](expected, plan);
}

function rate(expected: number, { width, level }: SizePlan): SizeAnalysis {
  const result = casesForWidth(expected, { width, level });
  const wanted = `an interval ${pointsText(width)} points wide for a rate of about ${percentText(expected, 1)}`;
  const text =
    "cases" in result
      ? `${counted(result.cases, "case")} give ${wanted} (Wilson, ${levelText(level)}; width on average over the counts that may come).`
      : `No number of cases for ${wanted}: ${result.because}.`;
  return { result, text };
}

function free(expected: number, { level }: SizePlan): SizeAnalysis {
  const result = consecutiveSuccesses(expected, { level });
  const text = `${counted(result.successes, "case")} in a row without a failure exclude a failure rate above ${decimalText(expected * 100, Number.isInteger(expected * 100) ? 0 : 1)}% (one-sided ${levelText(level)}, exact).`;
  return { result, text };
}

function kappa(expected: number, { width, raters, shares: weights, level, simulate, seed }: SizePlan): SizeAnalysis {
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const model = { shares: weights.map((weight) => weight / sum), kappa: expected, raters };
  const planned = imagesForKappa(model, { width, level });
  const tried = simulate ? simulateKappaWidth(model, { images: planned.images, level, seed }) : null;
  const lines = [
    `${counted(planned.images, "radiograph")}, read by ${counted(raters, "observer")}, give an interval of ± ${decimalText(width / 2, 2)} for unweighted kappa of about ${decimalText(expected, 2)} (${levelText(level)}).`,
    ...(tried === null
      ? []
      : [
          `Tried on ${tried.studies} simulated studies: ± ${decimalText(tried.meanWidth / 2, 2)} on average, ${percentText(tried.coverage, 1)} hold the planned kappa.`,
        ]),
  ];
  return { result: tried === null ? planned : { ...planned, simulated: tried }, text: lines.join("\n") };
}

function icc(expected: number, { width, raters, level }: SizePlan): SizeAnalysis {
  const result = imagesForIcc({ icc: expected, raters }, { width, level });
  const text = `${counted(result.images, "radiograph")}, read by ${counted(raters, "observer")}, give an interval of ± ${decimalText(width / 2, 2)} for an intraclass correlation of about ${decimalText(expected, 2)} (${levelText(level)}; Bonett 2002).`;
  return { result, text };
}
