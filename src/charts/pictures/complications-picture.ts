import { levelText } from "../../report/number-text.js";
import { unitWords } from "../../report/unit-words.js";
import { eventLimits, type EventLimitsRow } from "../event-limits.js";
import type { PictureMaker } from "../section-pictures.js";
import { noteOf } from "./rate-row.js";

/** How often each complication was seen and how often it may occur, those never seen included. */
export const complicationsPicture: PictureMaker = (findings) => {
  const { complications } = findings.wentWrong;
  if ("estimate" in complications) return null;
  const rows = complications.flatMap(({ name, rate }): EventLimitsRow[] =>
    rate.estimate === null || rate.wilson === null || rate.wilson50 === null
      ? []
      : [
          {
            label: name,
            count: `${rate.count.successes} of ${rate.count.trials}`,
            note: noteOf(rate),
            events: rate.count.succeeded,
            estimate: rate.estimate,
            interval: rate.wilson,
            inner: rate.wilson50,
          },
        ],
  );
  if (rows.length === 0) return null;
  return {
    name: "complications",
    caption: `Each cross is one ${unitWords(findings).one} that had it. Bands: 50% and ${levelText(findings.level)} Wilson intervals.`,
    drawing: (width) => eventLimits(rows, width === undefined ? {} : { width }),
  };
};
