import type { RawCell, Value } from "../types.js";
import { readNumber } from "./read-number.js";
import {
  ask,
  leftOut,
  missing,
  notKnown,
  type Asks,
  type Choice,
  type ColumnFacts,
  type Reader,
  type Reading,
} from "./reading.js";

/**
 * A displacement or other measure of severity. On top of the numbers: fractions that the sheet program turned into dates
 * ("1-Mar" for 1/3) are asked, and so are units that the rest of the column does not share.
 */
export const readMeasurement: Reader = (text, facts, cell) => {
  if (facts.motion) return readNumber(text, facts, cell);
  const read = convertedFraction(text, cell) ?? readNumber(text, facts, cell);
  if (facts.mixedShares && !read.asks && read.value.kind === "number" && read.value.unit === undefined) {
    const { number } = read.value;
    if (number > 0 && number < 1)
      return ask("unit", text, `"${text}" stands among numbers far above one: a share of the whole, or as it stands?`, [
        {
          label: `a share, ${Number((number * 100).toPrecision(12))} per cent`,
          value: { kind: "number", number: Number((number * 100).toPrecision(12)) },
        },
        { label: "as it stands", value: read.value },
        notKnown,
      ]);
  }
  if (read.asks) return askedInUnit(read, read.asks, facts.unit);
  return read.value.kind === "number" ? oneUnit(text, read, facts) : read;
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
function oneUnit(text: string, read: Reading, { unit, width }: ColumnFacts): Reading {
  const before = read.value as NumberValue;
  const value = inUnit(before, unit, text);
  if (unit === undefined || value.unit === unit) {
    if (before.unit === value.unit || value.number === before.number) return { ...read, value };
    const from = before.unit ?? "share";
    const why = `${names[from] ?? from} in a column of ${names[value.unit!] ?? value.unit}, read as ${value.number}`;
    return { value, why };
  }
  if (width !== undefined && value.unit === "mm" && unit === "percent" && value.bound === undefined)
    return ask("unit", text, `"${text}" is in mm, the column in percent: convert it by "${width}"?`, [
      { label: `per cent of "${width}"`, value: missing("unknown"), ofWidth: value.number },
      ...leftOut,
    ]);
  return ask(
    "unit",
    text,
    `"${text}" is in ${names[value.unit!] ?? value.unit}, the column in ${names[unit] ?? unit}: the conversion needs the width; leave it out?`,
    leftOut,
  );
}

type NumberValue = Extract<Value, { kind: "number" }>;

/** The number in the unit of its column; unchanged where arithmetic does not lead there. A bare 0.4 beside percentages is a share. */
function inUnit(value: NumberValue, unit: string | undefined, text: string): NumberValue {
  if (unit === undefined || value.unit === unit) return value;
  const fraction = value.unit === undefined && value.number > 0 && value.number <= 1 && /[.,]/.test(text);
  const from = value.unit ?? (fraction && unit === "percent" ? "share" : undefined);
  if (from === undefined) return { ...value, unit };
  const factor = factors[`${from} ${unit}`];
  return factor === undefined ? value : { ...value, number: Number((value.number * factor).toPrecision(15)), unit };
}

/** A question whose choices are in the unit of the column. */
function askedInUnit(read: Reading, asks: Asks, unit: string | undefined): Reading {
  const convert = (value: Value): Value => (value.kind === "number" ? inUnit(value, unit, asks.text) : value);
  const choices = asks.choices.map((choice) => ({ ...choice, value: convert(choice.value) }));
  const meanwhile = asks.meanwhile === undefined ? {} : { meanwhile: convert(asks.meanwhile) };
  return { value: convert(read.value), asks: { ...asks, choices, ...meanwhile } };
}
