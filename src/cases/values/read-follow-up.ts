import type { Value } from "../types.js";
import { readMissing } from "./read-missing.js";
import { plainNumber, unitOf } from "./read-number.js";
import { ask, leftOut, missing, notKnown, unreadable, type Choice, type Reader } from "./reading.js";

const inMonths: Readonly<Record<string, number>> = { months: 1, years: 12, weeks: 12 / 52, days: 12 / 365.25 };

/**
 * Follow-up in months. Clinic shorthand "6/12" is 6 months and "1 yr" 12; "52/52" (weeks) and "3/7" (days) are proposed and
 * asked; a bare number takes the unit of the heading, or is asked.
 */
export const readFollowUp: Reader = (text, facts) => {
  const gone = readMissing(text);
  if (gone) return gone;
  const twelfths = /^(\d{1,3})\s*\/\s*12$/.exec(text);
  if (twelfths) return { value: monthsOf(Number(twelfths[1])), why: `${twelfths[1]} months in clinic shorthand` };
  const shorthand = /^(\d{1,3})\s*\/\s*(52|7)$/.exec(text);
  if (shorthand) {
    const unit = shorthand[2] === "52" ? "weeks" : "days";
    const value = monthsOf(Number(shorthand[1]) * inMonths[unit]!);
    return ask("shorthand", text, `"${text}" reads as ${shorthand[1]} ${unit} in clinic shorthand: is it?`, [
      { label: `${shorthand[1]} ${unit}`, value },
      notKnown,
    ]);
  }
  const both = /^(\d{1,2})\s*(?:y|yr|yrs|years?)\s*(\d{1,2})\s*(?:m|mo|mths?|months?)$/i.exec(text);
  if (both) return { value: monthsOf(Number(both[1]) * 12 + Number(both[2])), why: "years and months" };
  const parts = /^([\d.,½]+)\s*([a-z]*)\.?$/i.exec(text);
  const number = parts ? plainNumber(parts[1]!.replace("½", ".5"), true) : undefined;
  const unit = parts?.[2] ? unitOf(parts[2]) : facts.unit;
  if (typeof number === "number") {
    const factor = unit === undefined ? undefined : inMonths[unit];
    if (factor !== undefined)
      return {
        value: monthsOf(number * factor),
        ...(unit === "months" && !parts![2] ? {} : { why: `${unit}, in months` }),
      };
    if (!parts![2]) return withoutUnit(number);
  }
  if (/phone|letter|e-?mail|video|tele/i.test(text))
    return ask("contact", text, `"${text}": contact without an examination?`, [
      { label: "no examination", value: missing("notDone") },
      ...leftOut,
    ]);
  const bound = /^(>|≥|over|at least)\s*([\d.,]+)\s*([a-z]*)$/i.exec(text);
  const least = bound ? plainNumber(bound[2]!, true) : undefined;
  if (typeof least === "number") {
    const units = bound![3] ? [unitOf(bound![3]) ?? "months"] : ["months", "years"];
    const choices = units.map((each): Choice => ({
      label: `more than ${least} ${each}`,
      value: { ...monthsOf(least * (inMonths[each] ?? 1)), bound: "above" },
    }));
    return ask("bound", text, `"${text}" is a lower bound: which unit, or what was the time?`, [...choices, notKnown]);
  }
  return unreadable(text, "a length of follow-up", [{ label: "no examination", value: missing("notDone") }]);
};

function monthsOf(number: number): Extract<Value, { kind: "number" }> {
  return { kind: "number", number };
}

/** All bare numbers of a column are asked about at once. */
function withoutUnit(number: number): ReturnType<Reader> {
  const choices = Object.entries(inMonths).map(([unit, factor]): Choice => ({
    label: unit,
    value: monthsOf(number * factor),
  }));
  return ask("unit", "", "follow-up is given as bare numbers: in which unit?", choices);
}
