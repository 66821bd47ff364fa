import { belongingOf, type Belonging } from "../table/yes-no-heading.js";
import type { RawCell } from "../types.js";
import { readDate } from "./read-date.js";
import { readMissing } from "./read-missing.js";
import { readNumber } from "./read-number.js";
import { readYesNo } from "./read-yes-no.js";
import type { ColumnFacts, Reader, Reading } from "./reading.js";

/** A column without a role of its own: read by what most of its cells are. */
export const readOther: Reader = (text, facts, cell) => {
  const belonging = belongingOf(facts.name);
  if (belonging) return readBelonging(text, facts, cell, belonging);
  if (facts.values === "number") return readNumber(text, facts, cell);
  if (facts.values === "date") return readDate(text, facts, cell);
  if (facts.values === "yesNo") return readYesNo(text, facts, cell);
  return readMissing(text) ?? { value: { kind: "text", text } };
};

/** Free text and names of things: kept as they stand. */
export const readPlain: Reader = (text) => (text === "" ? readMissing(text)! : { value: { kind: "text", text } });

/** Yes or no with its reason: "Y", "no - refracture", "pathological"; codes and signs are asked. */
function readBelonging(text: string, facts: ColumnFacts, cell: RawCell, belonging: Belonging): Reading {
  const gone = readMissing(text);
  if (gone) return gone;
  const remark = /^(yes|no|y|n)\s*[-–:,;(]\s*(.+?)\)?$/i.exec(text);
  const yes = remark && /^y/i.test(remark[1]!);
  // A reason for leaving says more than the yes before it.
  if (remark && yes && belonging === "exclusion")
    return { value: { kind: "text", text: remark[2]! }, why: "the reason" };
  if (remark) return { value: { kind: "yesNo", yes: yes! }, why: `${yes ? "yes" : "no"}, with a remark` };
  if (/^\p{L}{3,}|\s/u.test(text) && readYesNo(text, facts, cell).asks) return { value: { kind: "text", text } };
  return readYesNo(text, facts, cell);
}
