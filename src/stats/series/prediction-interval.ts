import { studentTQuantile } from "../../numeric/student-t.js";
import type { Interval } from "../types.js";

/**
 * Where the true value of a new series like these may lie, by Student's t with two degrees of freedom less than series;
 * null for fewer than three.
 *
 * @param of.estimate, of.standardError of the mean
 * @param of.tau standard deviation between series
 * @param of.series how many
 * @param of.level coverage in (0, 1)
 * @see Higgins, Thompson and Spiegelhalter 2009, J R Stat Soc A 172:137-159, equation 12
 * @example predictionInterval({ estimate: 0, standardError: 3, tau: 4, series: 2, level: 0.95 }) // => null
 */
export function predictionInterval(of: {
  readonly estimate: number;
  readonly standardError: number;
  readonly tau: number;
  readonly series: number;
  readonly level: number;
}): Interval | null {
  if (of.series < 3) return null;
  const half = studentTQuantile((1 + of.level) / 2, of.series - 2) * Math.hypot(of.tau, of.standardError);
  return { low: of.estimate - half, high: of.estimate + half };
}
