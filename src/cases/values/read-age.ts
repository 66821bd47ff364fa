import type { Value } from "../types.js";
import { cellLook } from "../table/cell-look.js";
import { readMissing } from "./read-missing.js";
import { plainNumber } from "./read-number.js";
import { ask, leftOut, missing, notKnown, unreadable, type Choice, type Reader } from "./reading.js";

const years = String.raw`(?:y ?\/? ?o|y|yr|yrs|year|years|j|jahre?|a|ans?)\.?`;
const months = String.raw`(?:m|mo|mos|mth|mths|month|months|monate?|mois)\.?`;
const yearsAndMonths = new RegExp(
  String.raw`^(\d{1,2})\s*(?:${years}\s*(?:old)?\s*,?\s*(?:and)?\s*(\d{1,2})\s*${months}?|\+\s*(\d{1,2}))$`,
  "i",
);
const onlyYears = new RegExp(String.raw`^([\d.,]+)\s*${years}(?:\s*old)?$`, "i");
const onlyMonths = new RegExp(String.raw`^(\d{1,3})\s*${months}$`, "i");
const oldest = 120;

/**
 * Age in years: "8y 3m", "12+6" (years and months), "13,5", "150m". "13.11" may be 13 years 11 months and is asked, as is a
 * date; "~15" is kept as about 15 and asked.
 */
export const readAge: Reader = (text, facts, cell) => {
  const gone = readMissing(text);
  if (gone) return gone;
  if (cell.date !== undefined || cellLook(text) === "date")
    // A birth date identifies: the question does not repeat it.
    return ask("birth", "(a date)", "a date where an age belongs, perhaps a birth date: what was the age?", leftOut);
  const about = /^(~|≈|c\.?|ca\.?|circa|about|approx\.?)\s*/i.exec(text);
  const body = (about ? text.slice(about[0].length) : text)
    .replace(/ ?½| ?(?:&|and|\+) ?1\/2$| 1\/2$/, ".5")
    .replace(/^(\d{1,2}) ?(?:y|yrs?|,|\+| )? ?(\d{1,2})\/12$/i, "$1+$2");
  const range = /^(\d{1,2})\s*(?:-|–|—|to|or|bis)\s*(\d{1,2})$/.exec(body);
  if (range && Number(range[2]) - Number(range[1]) <= 5) {
    const [low, high] = [Number(range[1]), Number(range[2])];
    const ages = [(low + high) / 2, low, high].map((number): Choice => ({
      label: `${number} years`,
      value: { kind: "number", number },
    }));
    return ask("age", text, `"${text}" is a range: which age?`, [...ages, notKnown]);
  }
  const read = plainAge(body, facts.unit);
  if (about && typeof read === "number") {
    const value: Value = { kind: "number", number: read, approximate: true };
    return ask(
      "about",
      text,
      `"${text}" is approximate: use it as it stands?`,
      [{ label: `use ${read}`, value }, notKnown],
      value,
    );
  }
  if (typeof read === "number") return inRange(read, text, facts.unit);
  if (read)
    return ask("age", text, `"${text}" can be ${read.map(({ label }) => label).join(" or ")}: which?`, [
      ...read,
      notKnown,
    ]);
  return unreadable(text, "an age");
};

/** Years, two readings of one text, or undefined. */
function plainAge(text: string, unit: string | undefined): number | readonly Choice[] | undefined {
  const both = yearsAndMonths.exec(text);
  if (both) return inYears(Number(both[1]), Number(both[2] ?? both[3]));
  const justYears = onlyYears.exec(text);
  const justMonths = onlyMonths.exec(text);
  if (justMonths) return inYears(0, Number(justMonths[1]), true);
  const digits = justYears ? justYears[1]! : text;
  const doubt = /^(\d{1,2})[.,](0[1-9]|1[01])$/.exec(digits);
  const number = plainNumber(digits, true);
  if (typeof number !== "number" || number < 0) return undefined;
  if (unit === "months" && !justYears) return number / 12;
  if (doubt) {
    const whole = inYears(Number(doubt[1]), Number(doubt[2]))!;
    const label = `${doubt[1]} years ${Number(doubt[2])} months`;
    return [
      { label, value: { kind: "number", number: whole } },
      { label: `${number} years`, value: { kind: "number", number } },
    ];
  }
  return number;
}

function inYears(wholeYears: number, extraMonths: number, many = false): number | undefined {
  return many || extraMonths < 12 ? wholeYears + extraMonths / 12 : undefined;
}

function inRange(age: number, text: string, unit: string | undefined): ReturnType<Reader> {
  const value: Value = { kind: "number", number: age };
  if (age > oldest)
    return ask("code", text, `${text} is no age in years: months, or a code for missing?`, [
      { label: `${age} months`, value: { kind: "number", number: age / 12 } },
      { label: "not known", value: missing("unknown") },
    ]);
  if (String(age) === text) return { value };
  return {
    value,
    why: unit === "months" || /m/i.test(text) ? "months, in years" : `age ${Number(age.toFixed(2))} years`,
  };
}
