import type { PercentFact } from "./facts.js";
import { type Cursor, countAt, numberAt, percentEnd, take, textAt } from "./cursor.js";
import { countsOthers, measures, unitAfter, unitOf } from "./units.js";

/** Percentages: "87%", "83.8 per cent", "93 v 69%", "87% of 47 fractures". Takes their tokens. */
export function readPercents(cursor: Cursor): PercentFact[] {
  const facts: PercentFact[] = [];
  for (let i = 0; i < cursor.tokens.length; i++) {
    const number = numberAt(cursor, i);
    if (!number) continue;
    const end = percentEnd(cursor, i + 1);
    const to = end > i + 1 ? end : sharedPercent(cursor, i) ? i + 1 : 0;
    if (to === 0) continue;
    const whole = wholeAfter(cursor, to);
    const fact: PercentFact = {
      kind: "percent", from: i, to: whole.to, number: { value: number.value, decimals: number.decimals, unit: "percent" }, trials: whole.trials, unit: whole.unit, marked: true, change: tellsChange(cursor, i, whole.to),
    }; // prettier-ignore
    take(cursor, fact);
    facts.push(fact);
  }
  return facts;
}

const changing = new Set(
  "by difference differences reduction reductions increase increased decrease decreased change changed gain gained improvement improved rise rose fell fall drop dropped higher lower better worse more less greater smaller benefit effect absolute relative bias error".split(
    " ",
  ),
);

/** What makes a "reduction" a manoeuvre. */
const manoeuvres = new Set(
  "closed open assisted percutaneous successful acceptable anatomical anatomic manipulative fracture good initial primary".split(
    " ",
  ),
);

/** "improved by 12%", "12% higher": a word of change in the few before or right after. */
function tellsChange(cursor: Cursor, i: number, to: number): boolean {
  for (let at = i - 1; at >= Math.max(0, i - 7); at--)
    if (changing.has(textAt(cursor, at)) && !manoeuvres.has(textAt(cursor, at - 1))) return true;
  return changing.has(textAt(cursor, to));
}

const sharing = new Set(["v", "vs", "versus", "and", "to", "or", "-", ","]);

/** The 93 of "93 v 69%": a bare number joined to one with a percent sign. */
function sharedPercent(cursor: Cursor, i: number): boolean {
  let at = i + 1;
  if (textAt(cursor, at) === "," && textAt(cursor, at + 1) === "and") at++;
  if (!sharing.has(textAt(cursor, at))) return false;
  if (textAt(cursor, at) === "v" && textAt(cursor, at + 1) === ".") at++;
  if (textAt(cursor, at) === "vs" && textAt(cursor, at + 1) === ".") at++;
  const open = textAt(cursor, i - 1);
  const enclosed = ["(", "from", "between", "was", "were", ":", ";", ","].includes(open);
  return enclosed && numberAt(cursor, at + 1) !== null && percentEnd(cursor, at + 2) > at + 2;
}

const determiners = new Set("the these those our all a total their".split(" "));

/** "of 47 fractures" or "of the children" after a percentage. */
function wholeAfter(cursor: Cursor, from: number): { trials: number | null; unit: string | null; to: number } {
  const none = { trials: null, unit: null, to: from };
  const joint = textAt(cursor, from);
  if (joint !== "of" && joint !== "in" && joint !== "among") return none;
  let at = from + 1;
  while (at < from + 6 && (determiners.has(textAt(cursor, at)) || textAt(cursor, at) === "of")) at++;
  const trials = countAt(cursor, at);
  if (trials !== null && trials > 0 && !measures(cursor, at + 1) && !countsOthers(cursor, at + 1)) {
    const unit = unitAfter(cursor, at + 1);
    if (joint === "of" || unit) return { trials, unit, to: at + 1 };
  }
  for (let word = at; joint === "of" && word < at + 3; word++) {
    const unit = unitOf(textAt(cursor, word));
    if (unit) return { trials: null, unit, to: from };
    if (cursor.tokens[word]?.kind !== "word") break;
  }
  return none;
}
