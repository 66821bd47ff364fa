import type { RawCell, RawSheet, Role } from "../types.js";
import type { ColumnFacts } from "./reading.js";
import { namesMotion } from "../table/heading-words.js";
import { looseDate, plainDate, type LooseDate } from "./read-date.js";
import { readMissing } from "./read-missing.js";
import { plainNumber, unitOf } from "./read-number.js";

/** One distinct cell of a column and how often it stands there. */
export interface Distinct {
  readonly text: string;
  readonly cell: RawCell;
  readonly count: number;
}

/** What the cells of a column show together: decimal sign, order of dates, unit, usual range, kind of values. */
export function columnFacts(
  name: string,
  role: Role,
  cells: readonly Distinct[],
  sheet: RawSheet,
  latestYear: number,
): ColumnFacts {
  const present = unread.has(role)
    ? []
    : cells.filter(({ text }) => text !== "" && text.length <= longest && !readMissing(text));
  const decimalComma = commaFor(present);
  const numbers = present.map(
    ({ text, cell }) => cell.number ?? plainNumber(text.replace(/[°%]$/, "").trim(), decimalComma),
  );
  const loose = present.map(({ text }) => looseDate(text, latestYear));
  const dates = present.map(({ text, cell }) => cell.date ?? plainDate(text, latestYear));
  const sorted = dates.filter((date) => date !== undefined).toSorted();
  const motion = role === "measurement" && namesMotion(name);
  return {
    name,
    decimalComma,
    dateOrder: orderOf(loose),
    unit: measured.has(role)
      ? (headingUnit(name) ?? (role === "measurement" && !motion ? cellUnit(present) : undefined))
      : undefined,
    ...(motion ? { motion: true as const } : {}),
    ...(role === "measurement" && !motion && mixesShares(name, present, numbers) ? { mixedShares: true as const } : {}),
    ...pairOrder(name),
    wordGrades: role === "grade" && mostlyWords(present),
    ...(role === "grade" && present.some(({ text }) => /^(vi{1,3}|ix|[7-9])$/i.test(text))
      ? { tenGrades: true as const }
      : {}),
    latestYear,
    values: kindOf(present, numbers, (i) => (loose[i] ?? dates[i]) !== undefined),
    usual: usualRange(present, numbers),
    ...(role === "date" ? { years: yearsOf(present, latestYear) } : {}),
    span: sorted.length > 0 ? { first: sorted[0]!, last: sorted.at(-1)! } : undefined,
    kind: sheet.kind,
  };
}

/** Bare numbers of which a fifth at least lie between 0 and 1, and a fifth above 2: shares and per cents side by side. */
function mixesShares(
  name: string,
  cells: readonly Distinct[],
  numbers: readonly (number | "ambiguous" | undefined)[],
): boolean {
  if (headingUnit(name) !== undefined) return false;
  const bare = numbers.flatMap((number, i) =>
    typeof number === "number" && /^[\d.,]+$/.test(cells[i]!.text) ? [number] : [],
  );
  const shares = bare.filter((number) => number > 0 && number < 1).length;
  const whole = bare.filter((number) => number > 2 && number <= 200).length;
  return shares >= bare.length * 0.2 && whole > 1 && whole >= bare.length * 0.2;
}

/** "Flexion R/L" says which limb comes first in its cells. */
function pairOrder(name: string): Pick<ColumnFacts, "pair"> {
  if (/\b(l|left|li)\s*[/|,-]\s*(r|right|re)\b/i.test(name)) return { pair: "left first" };
  return /\b(r|right|re)\s*[/|,-]\s*(l|left|li)\b/i.test(name) ? { pair: "right first" } : {};
}

/** Longer texts are remarks: they say nothing about numbers or dates. */
const longest = 40;
/** Their cells stay the text that they are: nothing in them is a number or a date to be read. */
const unread: ReadonlySet<Role> = new Set(["id", "child", "identifier", "note", "operator"]);
const measured: ReadonlySet<Role> = new Set(["measurement", "age", "followUp", "rater", "other"]);

/** Grades in words or letters ("mild", "B"), not in Roman or Arabic numbers. */
function mostlyWords(cells: readonly Distinct[]): boolean {
  const numbered = cells.filter(({ text }) => /\d|^(grade |type |g)?[ivx]+[a-f?]?$/i.test(text));
  const sum = (list: readonly Distinct[]): number => list.reduce((total, { count }) => total + count, 0);
  return cells.length <= 8 && sum(numbered) < sum(cells) * 0.3;
}

function commaFor(cells: readonly Distinct[]): boolean | undefined {
  const comma = cells.some(
    ({ text }) => text.includes(",") && /\d,\d{1,2}(?!\d)|\d,\d{4,}|(^|\D)0,\d/.test(text) && !/\d\.\d/.test(text),
  );
  const point = cells.some(
    ({ text }) => text.includes(".") && /\d\.\d{1,2}(?![\d.])|\d\.\d{4,}|(^|\D)0\.\d/.test(text) && !/\d,\d/.test(text),
  );
  return comma === point ? undefined : comma;
}

function orderOf(dates: readonly (LooseDate | undefined)[]): ColumnFacts["dateOrder"] {
  let dayFirst = false;
  let monthFirst = false;
  for (const loose of dates) {
    if (!loose) continue;
    if (loose.first > 12 && loose.second <= 12) dayFirst = true;
    if (loose.second > 12 && loose.first <= 12) monthFirst = true;
  }
  if (dayFirst && monthFirst) return "mixed";
  if (dayFirst) return "dayFirst";
  return monthFirst ? "monthFirst" : "unproved";
}

/** Unit named in the heading: "Displ (mm)", "Age in months", "FU months", "Displ: %". */
export function headingUnit(name: string): string | undefined {
  for (const word of name.split(/[\s()[\],:/_]+/).toReversed()) {
    const unit = word.length > 1 || /[°%]/.test(word) ? unitOf(word) : undefined;
    if (unit) return unit;
  }
  return undefined;
}

/** Unit that the cells themselves carry: the commonest of percent, shares ("2/3"), mm; undefined for bare numbers. */
function cellUnit(cells: readonly Distinct[]): string | undefined {
  const counted = (pattern: RegExp): number =>
    cells.reduce((sum, { text, count }) => sum + (pattern.test(text) ? count : 0), 0);
  const units = [
    { unit: "percent", count: counted(/\d\s*%$/) },
    { unit: "share", count: counted(/^\d ?\/ ?\d$/) },
    { unit: "mm", count: counted(/\d\s*mm\.?$/i) },
  ];
  const best = units.toSorted((a, b) => b.count - a.count)[0]!;
  if (best.count === 0) return undefined;
  return best.unit === "share" && units[0]!.count > 0 ? "percent" : best.unit;
}

function kindOf(
  cells: readonly Distinct[],
  numbers: readonly (number | "ambiguous" | undefined)[],
  isDate: (i: number) => boolean,
): ColumnFacts["values"] {
  let all = 0;
  const counts = { number: 0, date: 0, yesNo: 0 };
  cells.forEach(({ text, cell, count }, i) => {
    all += count;
    if (isDate(i)) counts.date += count;
    else if (numbers[i] !== undefined || numberLike.test(text)) counts.number += count;
    else if (cell.boolean !== undefined || /^(y|n|yes|no|true|false|ja|nein)$/i.test(text)) counts.yesNo += count;
  });
  const enough = all * 0.6;
  if (all === 0) return "text";
  if (counts.date >= enough) return "date";
  if (counts.number >= enough) return "number";
  return counts.yesNo >= enough ? "yesNo" : "text";
}

/** A number with its mark, unit, partner or remark. */
const numberLike = /^[<>~≈≥≤]?\s*[-−]?\d+([.,]\d+)?\s*(°|deg\w*|mm|cm|%|[(/?–-].*)?$/i;

/** Twice the span of the middle half on either side, at least: codes such as 999 fall outside. */
function usualRange(
  cells: readonly Distinct[],
  numbers: readonly (number | "ambiguous" | undefined)[],
): ColumnFacts["usual"] {
  const values: number[] = [];
  numbers.forEach((number, i) => {
    if (typeof number === "number") for (let k = 0; k < Math.min(cells[i]!.count, 1000); k++) values.push(number);
  });
  const plain = values
    .filter((value) => !/^-?(9{2,}|8{3,}|7{3,})$/.test(String(value)) && value !== -1 && value !== -9)
    .toSorted((a, b) => a - b);
  if (plain.length < 2) return undefined;
  const at = (share: number): number => plain[Math.round(share * (plain.length - 1))]!;
  const [q1, q3] = [at(0.25), at(0.75)];
  const reach = Math.max(q3 - q1, Math.abs(q3) * 0.25, 1e-9) * 2;
  return { low: Math.min(q1 - reach, plain[0]!), high: Math.max(q3 + reach, plain.at(-1)!) };
}

/** Years of the dates of a column, whatever the order of day and month. */
function yearsOf(cells: readonly Distinct[], latestYear: number): number[] {
  const years = cells.flatMap(({ text, cell }) => {
    const iso = cell.date ?? plainDate(text, latestYear);
    return iso ? Number(iso.slice(0, 4)) : (looseDate(text, latestYear)?.year ?? []);
  });
  return [...new Set(years)].toSorted((a, b) => a - b);
}
