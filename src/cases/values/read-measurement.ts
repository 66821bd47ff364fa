import type { RawCell, Value } from "../types.js";
import { readNumber } from "./read-number.js";
import { ask, leftOut, notKnown, type Choice, type Reader, type Reading } from "./reading.js";

/**
 * A displacement or other measure of severity. On top of the numbers: fractions that the sheet program turned into dates
 * ("1-Mar" for 1/3) are asked, and so are units that the rest of the column does not share.
 */
export const readMeasurement: Reader = (text, facts, cell) => {
  const damage = convertedFraction(text, cell);
  if (damage) return damage;
  const read = readNumber(text, facts, cell);
  if (read.asks || read.value.kind !== "number") return read;
  return oneUnit(text, read, facts.unit);
};

const named = /^(\d{1,2})[-. /]+(\p{L}{3,9})\.?$/u;
const reversed = /^(\p{L}{3,9})[-. ](\d{1,2})$/u;
const months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const abroad: Readonly<Record<string, number>> = { mrz: 3, mär: 3, mai: 5, okt: 10, dez: 12 };

/** Day and month of a date that stands where a fraction belongs, as the two fractions it may have been. */
function convertedFraction(text: string, cell: RawCell): Reading | undefined {
  const parts = dayAndMonth(text, cell);
  if (!parts) return undefined;
  const [day, month] = parts;
  const choices = [`${day}/${month}`, `${month}/${day}`].flatMap((label, i): Choice[] => {
    const number = i === 0 ? day / month : month / day;
    return number <= 1 ? [{ label, value: { kind: "number", number, unit: "share" } }] : [];
  });
  const fractions = choices.map(({ label }) => label).join(" or ");
  return ask(
    "converted",
    text,
    `"${text}" is a date where a measurement belongs; sheets turn fractions into dates: was it ${fractions || "a fraction"}?`,
    [...choices, notKnown],
  );
}

function dayAndMonth(text: string, cell: RawCell): readonly [number, number] | undefined {
  const iso = cell.date ?? (/^\d{4}-\d{2}-\d{2}/.test(text) ? text : undefined);
  const loose = /^(\d{1,2})[./](\d{1,2})[./]\d{2,4}$/.exec(text);
  if (loose) return [Number(loose[1]), Number(loose[2])];
  if (iso) return [Number(iso.slice(8, 10)), Number(iso.slice(5, 7))];
  const match = named.exec(text);
  const back = reversed.exec(text);
  const name = (match?.[2] ?? back?.[1])?.toLowerCase().slice(0, 3);
  const month = name === undefined ? 0 : (abroad[name] ?? months.indexOf(name) + 1);
  if (month > 0) return [Number(match?.[1] ?? back?.[2]), month];
  const number = cell.number ?? (/^\d{5}$/.test(text) ? Number(text) : undefined);
  if (number !== undefined && Number.isInteger(number) && number >= 36_526 && number <= 60_000) {
    const day = new Date(Date.UTC(1899, 11, 30) + number * 86_400_000);
    return [day.getUTCDate(), day.getUTCMonth() + 1];
  }
  return undefined;
}

const names: Readonly<Record<string, string>> = { percent: "percent", share: "shares of the whole" };
const factors: Readonly<Record<string, number>> = {
  "cm mm": 10,
  "mm cm": 0.1,
  "share percent": 100,
  "percent share": 0.01,
};

/** Brings a number to the unit of its column where that needs nothing but arithmetic; asks for the rest. */
function oneUnit(text: string, read: Reading, unit: string | undefined): Reading {
  const value = read.value as Extract<Value, { kind: "number" }>;
  if (unit === undefined || value.unit === unit) return read;
  const fraction = value.unit === undefined && value.number > 0 && value.number <= 1;
  const from = value.unit ?? (fraction && unit === "percent" && /[.,]/.test(text) ? "share" : undefined);
  if (from === undefined) return { ...read, value: { ...value, unit } };
  const factor = factors[`${from} ${unit}`];
  if (factor !== undefined) {
    const number = Number((value.number * factor).toPrecision(15));
    return {
      value: { ...value, number, unit },
      why: `${names[from] ?? from} in a column of ${names[unit] ?? unit}, read as ${number}`,
    };
  }
  return ask(
    "unit",
    text,
    `"${text}" is in ${names[value.unit!] ?? value.unit}, the column in ${names[unit] ?? unit}: the conversion needs the width; leave it out?`,
    leftOut,
  );
}
