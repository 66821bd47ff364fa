import type { Tipping } from "../../findings/tipping.js";
import { levelText } from "../../report/number-text.js";
import type { PictureMaker } from "../section-pictures.js";
import { tippingMarks } from "../tipping-marks.js";

/** What each mark of the grid says. */
export function tippingCaption({ first, second, level }: Tipping): string {
  return `Each mark is one way the missing cases may have fared: circle, ${first.name} ahead; square, ${second.name} ahead; diamond, equal; filled where the ${levelText(level)} interval of the difference excludes 0.`;
}

/** Where the comparison tips over the missing cases. */
export const tippingPicture: PictureMaker = ({ missing: { tipping } }) => {
  if ("estimate" in tipping) return null;
  return {
    name: "tipping",
    caption: tippingCaption(tipping),
    drawing: (width) => tippingMarks(tipping, width === undefined ? {} : { width }),
  };
};
