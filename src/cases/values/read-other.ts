import { readDate } from "./read-date.js";
import { readMissing } from "./read-missing.js";
import { readNumber } from "./read-number.js";
import { readYesNo } from "./read-yes-no.js";
import type { Reader } from "./reading.js";

/** A column without a role of its own: read by what most of its cells are. */
export const readOther: Reader = (text, facts, cell) => {
  if (facts.values === "number") return readNumber(text, facts, cell);
  if (facts.values === "date") return readDate(text, facts, cell);
  if (facts.values === "yesNo") return readYesNo(text, facts, cell);
  return readMissing(text) ?? { value: { kind: "text", text } };
};

/** Free text and names of things: kept as they stand. */
export const readPlain: Reader = (text) => (text === "" ? readMissing(text)! : { value: { kind: "text", text } });
