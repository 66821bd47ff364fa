import { normalQuantile } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import { requireWidth } from "./model.js";

export interface ImagesForIcc {
  readonly method: "Bonett 2002";
  readonly icc: number;
  readonly raters: number;
  readonly level: number;
  readonly width: number;
  readonly images: number;
}

/**
 * Radiographs needed so that the interval of an intraclass correlation (one-way, or consistency; single) has a wanted width.
 *
 * @param expected.icc planned value, at least 0 and below 1
 * @param expected.raters integer of at least 2
 * @param options.width wanted full width of the interval, in (0, 1)
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when an argument is out of range; TypeError for unknown options
 * @see Bonett 2002, Stat Med 21:1331-1335, with its correction of 5 rho when two raters plan 0.7 or more
 * @example imagesForIcc({ icc: 0.8, raters: 3 }, { width: 0.2 }).images // => 36
 */
export function imagesForIcc(
  expected: { readonly icc: number; readonly raters: number },
  options: { readonly width: number; readonly level?: number },
): ImagesForIcc {
  requireOptions("imagesForIcc", options, ["width", "level"]);
  const { width, level = 0.95 } = options;
  const { icc, raters } = expected;
  requireLevel("imagesForIcc", level);
  requireWidth("imagesForIcc", width);
  if (!(icc >= 0 && icc < 1)) throw new RangeError(`imagesForIcc: icc must be at least 0 and below 1, got ${icc}`);
  if (!(Number.isInteger(raters) && raters >= 2))
    throw new RangeError(`imagesForIcc: raters must be an integer of at least 2, got ${raters}`);
  const z = normalQuantile((1 + level) / 2);
  const base = (8 * z ** 2 * (1 - icc) ** 2 * (1 + (raters - 1) * icc) ** 2) / (raters * (raters - 1) * width ** 2) + 1;
  const images = Math.max(2, Math.ceil(base + (raters === 2 && icc >= 0.7 ? 5 * icc : 0) - 1e-9));
  return { method: "Bonett 2002", icc, raters, level, width, images };
}
