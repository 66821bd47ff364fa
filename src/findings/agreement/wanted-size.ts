import { imagesForIcc } from "../../stats/agreement-size/images-for-icc.js";
import { imagesForKappa } from "../../stats/agreement-size/images-for-kappa.js";
import type { NotEstimable } from "../../stats/types.js";
import type { MeasurementFindings } from "./measurement-findings.js";
import { plannedRaters, type SizeFindings } from "./plan-findings.js";

/** Radiographs of the next study by its number of observers. */
export interface WantedSize {
  readonly kappa: number;
  readonly width: number;
  /** Correlation that the measurements at hand show; null for grades, or where it has no value to plan with. */
  readonly icc: number | null;
  readonly rows: readonly { readonly raters: number; readonly kappa: number; readonly icc: number | null }[];
}

/** The next study with the kappa and the width that a reader wants, grades as common as here. */
export function wantedSize(
  plan: SizeFindings | NotEstimable,
  measured: MeasurementFindings | null,
  choices: { readonly plan: { readonly kappa: number | null; readonly width: number }; readonly level: number },
): WantedSize | null {
  if (plan.estimate === null || plan.shares.length < 2) return null;
  const kappa = choices.plan.kappa ?? plan.estimate;
  const { width } = choices.plan;
  const found = measured?.icc.consistency.estimate ?? null;
  const icc = found !== null && found >= 0 && found < 1 ? found : null;
  const options = { width, level: choices.level };
  const rows = plannedRaters.map((raters) => ({
    raters,
    kappa: imagesForKappa({ shares: plan.shares, kappa, raters }, options).images,
    icc: icc === null ? null : imagesForIcc({ icc, raters }, options).images,
  }));
  return { kappa, width, icc, rows };
}
