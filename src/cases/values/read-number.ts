import { showValue } from "../show-value.js";
import type { Value } from "../types.js";
import { readMissing } from "./read-missing.js";
import {
  ask,
  leftOut,
  limbChoices,
  missing,
  notKnown,
  unreadable,
  type Choice,
  type ColumnFacts,
  type Reader,
  type Reading,
} from "./reading.js";

/** Text of one number in a fixed spelling: sign, digits, at most one point. */
export function plainNumber(text: string, decimalComma: boolean | undefined): number | "ambiguous" | undefined {
  if (!/^[-+−–.,\d]/.test(text)) return undefined;
  const t = text.replace(/[−–]/g, "-").replace(/(?<=\d)[ '’](?=\d{3}(\D|$))/g, "");
  if (/^[-+]?(\d+|\d*\.\d+|\d+\.)(e[-+]?\d{1,3})?$/i.test(t)) {
    // In a column with decimal commas, 1.234 may be one thousand or one and a bit.
    if (decimalComma === true && /^[-+]?[1-9]\d{0,2}\.\d{3}$/.test(t)) return "ambiguous";
    return Number(t);
  }
  if (/^[-+]?\d*,\d+$/.test(t)) {
    if (/^[-+]?[1-9]\d{0,2},\d{3}$/.test(t) && decimalComma !== true) return "ambiguous";
    return Number(t.replace(",", "."));
  }
  if (/^[-+]?\d{1,3}(,\d{3})+(\.\d+)?$/.test(t)) return Number(t.replaceAll(",", ""));
  if (/^[-+]?\d{1,3}(\.\d{3})+(,\d+)?$/.test(t)) return Number(t.replaceAll(".", "").replace(",", "."));
  return undefined;
}

const units: readonly (readonly [string, RegExp])[] = [
  ["percent", /^%$|^per ?cent$|^pct$/],
  ["°", /^(°|º|deg|degs|degrees?|grad)$/],
  ["mm", /^(mm|millimet(er|re)s?)$/],
  ["cm", /^(cm|centimet(er|re)s?)$/],
  ["months", /^(m|mo|mths?|months?|monate?)$/],
  ["years", /^(y|yrs?|years?|jahre?)$/],
  ["weeks", /^(w|wks?|weeks?|wochen?)$/],
  ["days", /^(d|days?|tage?)$/],
  ["hours", /^(h|hrs?|hours?|stunden?)$/],
];

/** Unit by its usual spellings; undefined for any other word. */
export function unitOf(text: string): string | undefined {
  const plain = text.trim().toLowerCase().replace(/\.$/, "");
  return units.find(([, pattern]) => pattern.test(plain))?.[0];
}

const mark =
  /^(>=|<=|=>|=<|[><≥≤]|over |above |more than |under |below |less than )?\s*(~|≈|c\.|ca\.?|circa|about|approx\.?|±)?\s*(.+)$/i;

/**
 * A number with its marks: "170°", ">170" (kept as a bound), "~45" (asked, kept as about), "12 mm", "40%" (0.4 of "share"),
 * "2/3". Ranges, words and codes are asked about, never averaged.
 */
export const readNumber: Reader = (text, facts, cell) => {
  if (cell.error || /^#(REF|VALUE|DIV\/0|NAME\?|NUM|NULL|SPILL|CALC)!?/i.test(text)) return brokenFormula(text);
  if (cell.number !== undefined && !text.endsWith("%")) return checkedCode(cell.number, text, facts, undefined);
  const gone = readMissing(text);
  if (gone) return gone;
  if (/^=/.test(text))
    return ask("value", text, `"${text}" is a formula without its result: what is the value?`, leftOut);
  const fraction = readFraction(text) ?? boundedFraction(text);
  if (fraction) return fraction;
  const [, boundMark = "", about = "", body = ""] = mark.exec(text) ?? [];
  const parts = /^([-−–+]?[\d.,' ’]*\d[.,]?|[.,]\d+)\s*([^\d]*)$/.exec(body.trim());
  const unit = parts?.[2] ? unitOf(parts[2]) : undefined;
  const number = parts ? plainNumber(parts[1]!.trim(), facts.decimalComma) : undefined;
  if (number === "ambiguous" && parts) return thousandsOrDecimals(text, parts[1]!);
  if (typeof number !== "number" || (parts?.[2] && !unit)) return markedNumber(text, facts);
  const value = valued(number, unit, boundMark);
  if (about)
    return ask(
      "about",
      text,
      `"${text}" is approximate: use it as it stands?`,
      [{ label: `use ${number}`, value: { ...value, approximate: true } }, notKnown],
      { ...value, approximate: true },
    );
  const read = checkedCode(number, text, facts, unit);
  return read.asks ? read : { value, ...(text === String(number) ? {} : { why: recoding(text, value, boundMark) }) };
};

/** "2/3", "~2/3", "2/3 of the shaft": a share of the whole. */
function readFraction(text: string): Reading | undefined {
  const match =
    /^(~|≈|c\.?|ca\.?|about|approx\.?)?\s*(\d{1,2}) ?\/ ?(\d{1,2})(?: (?:of )?(?:the )?(?:shaft|width|shaft width|diameter|bone))?$/i.exec(
      text,
    );
  if (!match || Number(match[3]) === 0 || Number(match[2]) > Number(match[3])) return undefined;
  const value: Value = { kind: "number", number: Number(match[2]) / Number(match[3]), unit: "share" };
  if (!match[1]) return { value, why: "a fraction of the whole" };
  const about: Value = { ...value, approximate: true };
  const label = `use ${match[2]}/${match[3]}`;
  return ask(
    "about",
    text,
    `"${text}" is approximate: use it as it stands?`,
    [{ label, value: about }, notKnown],
    about,
  );
}

/** "> 2/3" is kept as a bound; of "1/3 - 2/3" an end or the midpoint is chosen, not taken. */
function boundedFraction(text: string): Reading | undefined {
  const bound = /^(>=|<=|[><≥≤]|over|above|more than|under|below|less than)\s*(\d) ?\/ ?(\d)$/i.exec(text);
  const share = (top: string, bottom: string): number => Number(top) / Number(bottom);
  if (bound && Number(bound[3]) > 0) {
    const value = valued(share(bound[2]!, bound[3]!), "share", bound[1]!);
    return { value, why: `kept as a bound, ${value.bound} ${bound[2]}/${bound[3]}` };
  }
  const range = /^(\d) ?\/ ?(\d)\s*(?:-|–|—|to|bis)\s*(\d) ?\/ ?(\d)$/i.exec(text);
  if (!range || Number(range[2]) === 0 || Number(range[4]) === 0) return undefined;
  const [low, high] = [share(range[1]!, range[2]!), share(range[3]!, range[4]!)];
  const choice = (label: string, number: number): Choice => ({ label, value: valued(number, "share", "") });
  return ask("range", text, `"${text}" is a range: which value?`, [
    choice("the midpoint", (low + high) / 2),
    choice(`${range[1]}/${range[2]}`, low),
    choice(`${range[3]}/${range[4]}`, high),
    notKnown,
  ]);
}

function valued(number: number, unit: string | undefined, mark: string): Extract<Value, { kind: "number" }> {
  const bound = /^(>|≥|=>|over|above|more)/i.test(mark) ? "above" : mark === "" ? undefined : "below";
  return { kind: "number", number, ...(bound ? { bound } : {}), ...(unit ? { unit } : {}) };
}

function recoding(text: string, value: Extract<Value, { kind: "number" }>, mark: string): string {
  if (mark) return `kept as a bound, ${value.bound} ${value.number}`;
  if (text.includes(",")) return `decimal comma, read as ${value.number}`;
  return value.unit ? `a number in ${value.unit}` : "a number";
}

/** Numbers that stand for nothing measured: 999 and the like, when the rest of the column lies far away. */
function checkedCode(number: number, text: string, facts: ColumnFacts, unit: string | undefined): Reading {
  const value: Value = { kind: "number", number, ...(unit ? { unit } : {}) };
  const code = /^-?(9{2,}|8{3,}|7{3,})(\.0+)?$/.test(String(number)) || number === -1 || number === -9;
  const usual = facts.usual;
  const far = usual !== undefined && (number > usual.high || number < usual.low);
  if (!(code && (far || usual === undefined)))
    return facts.motion || motion.test(facts.name) ? angle(value, number, text) : { value };
  return ask("code", text, `${text} lies far from the other values: is it a code for missing?`, [
    ...leftOut,
    { label: `the number ${number}`, value },
  ]);
}

const motion = /\b(elev\w*|abduction|abd|flex\w*|rotation|rom|motion)\b/i;

/** No joint of the arm moves past 180 degrees, and a negative angle may be a loss. */
function angle(value: Value, number: number, text: string): Reading {
  if (number <= 180 && number >= 0) return { value };
  return ask("angle", text, `${text} is ${number < 0 ? "negative" : "over 180"} for an angle of motion: is it right?`, [
    { label: `use ${number}`, value },
    ...leftOut,
  ]);
}

function brokenFormula(text: string): Reading {
  return ask("value", text, `"${text}" is a broken formula, without a value: what should stand there?`, leftOut);
}

function thousandsOrDecimals(text: string, digits: string): Reading {
  const decimal = Number(digits.replace(",", "."));
  const whole = Number(digits.replace(/[.,]/g, ""));
  return ask("decimal", text, `"${text}" can be ${decimal} or ${whole}: which?`, [
    { label: String(decimal), value: { kind: "number", number: decimal } },
    { label: String(whole), value: { kind: "number", number: whole } },
    notKnown,
  ]);
}

/** A range, a pair, a number with a remark, or a word. */
function markedNumber(text: string, facts: ColumnFacts): Reading {
  const read = (part: string): number | undefined => {
    const number = plainNumber(part, facts.decimalComma);
    return typeof number === "number" ? number : undefined;
  };
  const range = /^([\d.,]+)\s*(?:-|–|—|to|bis|\.\.)\s*([\d.,]+)\s*(°|%|mm|cm|deg)?$/i.exec(text);
  if (range) {
    const [low, high] = [read(range[1]!), read(range[2]!)];
    if (low !== undefined && high !== undefined) {
      const middle = (low + high) / 2;
      const unit = range[3] ? unitOf(range[3]) : undefined;
      const choice = (number: number): Choice => ({ label: String(number), value: valued(number, unit, "") });
      return ask("range", text, `"${text}" is a range: which value?`, [
        { ...choice(middle), label: `the midpoint, ${middle}` },
        choice(low),
        choice(high),
        notKnown,
      ]);
    }
  }
  const pair = /^([\d.,]+)\s*(?:°)?\s*[/|]\s*([\d.,]+)\s*(?:°)?$/.exec(text);
  if (pair) {
    const [first, second] = [read(pair[1]!), read(pair[2]!)];
    if (first !== undefined && second !== undefined) {
      const [one, two] = [valued(first, undefined, ""), valued(second, undefined, "")];
      if (facts.pair) {
        const limbs = facts.pair === "left first" ? { left: one, right: two } : { left: two, right: one };
        const label = facts.pair === "left first" ? "left then right, as headed" : "right then left, as headed";
        const choice: Choice = { label, value: missing("unknown"), limbs };
        return ask("pair", "", `the cells of "${facts.name}" hold two values: ${label}?`, [choice, notKnown]);
      }
      return ask("pair", text, `"${text}" holds two values: one for each limb, or two readings?`, [
        ...limbChoices(one, two, showValue),
        { label: `only ${first}`, value: one },
        { label: `only ${second}`, value: two },
        notKnown,
      ]);
    }
  }
  const remark = /^([-−]?[\d.,]*\d)\s*(°|%|mm|cm|deg)?\s*[([*?!;,]\s*(.*)$/.exec(text);
  const number = remark ? read(remark[1]!) : undefined;
  if (number !== undefined) {
    const value = valued(number, remark![2] ? unitOf(remark![2]) : undefined, "");
    return ask("remark", text, `"${text}" is a number with a remark: does the number stand?`, [
      { label: `use ${number}`, value },
      { label: "not known", value: missing("unknown") },
    ]);
  }
  return unreadable(text, "a number");
}
