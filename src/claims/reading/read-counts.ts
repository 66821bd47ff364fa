import { countInBrackets, percentInBrackets } from "./count-brackets.js";
import type { CountFact, PercentFact } from "./facts.js";
import { type Cursor, countAt, percentEnd, take, textAt } from "./cursor.js";
import { countsOthers, isCaseUnit, measures, unitAfter, unitOf } from "./units.js";

/** Counts with their whole: "31/37", "31 of 37", "41 fractures (87%) of 47", "all 19", "none of 24". Takes their tokens. */
export function readCounts(cursor: Cursor): (CountFact | PercentFact)[] {
  const facts: (CountFact | PercentFact)[] = [];
  for (let i = 0; i < cursor.tokens.length; i++) {
    if (cursor.taken[i]) continue;
    const found =
      allButForm(cursor, i) ??
      fraction(cursor, i) ??
      ofForm(cursor, i) ??
      percentForm(cursor, i) ??
      eventForm(cursor, i) ??
      allForm(cursor, i) ??
      noneForm(cursor, i);
    if (!found) continue;
    for (const fact of found) {
      take(cursor, fact);
      facts.push(fact);
    }
  }
  return facts;
}

type Found = (CountFact | PercentFact)[] | null;

const count = (
  cursor: Cursor, from: number, to: number, form: CountFact["form"], successes: number, trials: number,
  unit: string | null = unitAfter(cursor, to),
): CountFact => ({ kind: "count", from, to, form, successes, trials, unit }); // prettier-ignore

function fraction(cursor: Cursor, i: number): Found {
  if (textAt(cursor, i + 1) !== "/" || cursor.tokens[i]!.spelled) return null;
  const [successes, trials] = [countAt(cursor, i), countAt(cursor, i + 2)];
  if (successes === null || trials === null || trials === 0) return null;
  // A date, a chain of figures, a pressure, a suture size.
  if (textAt(cursor, i + 3) === "/" || textAt(cursor, i - 1) === "/" || textAt(cursor, i + 3) === "mmhg") return null;
  if (successes === 24 && trials === 7) return null;
  // A file number is no count; "41/37 fractures" and "41/37 (111%)" are slips worth asking about.
  const percentBefore = textAt(cursor, i - 1) === "(" && ["%", "cent", "percent"].includes(textAt(cursor, i - 2));
  const named = percentBefore || unitAfter(cursor, i + 3) !== null || percentEnd(cursor, i + 5) > i + 5;
  if (successes > trials && !named) return null;
  return [count(cursor, i, i + 3, "of", successes, trials)];
}

const determiners = new Set(
  "the these those our all a total them their of such remaining other first last initial original eligible consecutive available".split(
    " ",
  ),
);

/** "of", "out of", "from among" and determiners at `i`; one past them, or 0. */
function ofEnd(cursor: Cursor, i: number): number {
  let at = i;
  if (textAt(cursor, at) === "out" || textAt(cursor, at) === "from") at++;
  if (textAt(cursor, at) !== "of" && textAt(cursor, at) !== "among" && textAt(cursor, at) !== "amongst") return 0;
  at++;
  while (at < i + 8 && determiners.has(textAt(cursor, at))) at++;
  return at;
}

const notBetween = new Set(
  "and or v vs versus but while whereas than to for with in at by after before from as mean median average aged".split(
    " ",
  ),
);

function ofForm(cursor: Cursor, i: number): Found {
  const successes = countAt(cursor, i);
  if (successes === null || measures(cursor, i + 1) || textAt(cursor, i - 1) === "grade") return null;
  let at = i + 1;
  let percent: PercentFact | null = null;
  for (let words = 0; words < 6; words++) {
    const end = ofEnd(cursor, at);
    if (end > 0) {
      const trials = countAt(cursor, end);
      if (trials === null || trials === 0 || measures(cursor, end + 1) || isYear(cursor, end)) return null;
      // "two of the three surgeons" operated; "81 of 96 surgeons" answered.
      if (trials <= 12 && countsOthers(cursor, end + 1)) return null;
      // "38 shoulders of 36 patients": two wholes.
      const limbs = ["limb", "fracture"].includes(unitAfter(cursor, i + 1) ?? "");
      if (successes >= trials && limbs && unitAfter(cursor, end + 1) === "child") return null;
      // "six feet in five patients (12%) relapsed out of 46 feet": the whole of another unit.
      const [own, all] = [unitAfter(cursor, i + 1), unitAfter(cursor, end + 1)];
      if (percent && ((own === "child" && isLimb(all)) || (isLimb(own) && all === "child"))) return null;
      if (cursor.tokens[i]!.spelled && successes === 1 && at > i + 1 && !percent) return null;
      const fact = count(
        cursor,
        i,
        end + 1,
        "of",
        successes,
        trials,
        unitAfter(cursor, end + 1) ?? unitAfter(cursor, i + 1),
      );
      return percent ? [fact, percent] : [fact];
    }
    const bracket = percentInBrackets(cursor, at);
    if (bracket && !percent) {
      percent = bracket.percent;
      at = bracket.to;
      continue;
    }
    const token = cursor.tokens[at];
    if (!token || token.kind !== "word" || notBetween.has(token.text) || cursor.taken[at]) return null;
    at++;
  }
  return null;
}

/** "16% (4) of 68 arms", "16% (n = 4) of the 68". */
function percentForm(cursor: Cursor, i: number): Found {
  const found = countInBrackets(cursor, i);
  const end = found ? ofEnd(cursor, found.to) : 0;
  if (!found || end === 0) return null;
  const trials = countAt(cursor, end);
  if (trials === null || trials === 0 || measures(cursor, end + 1) || countsOthers(cursor, end + 1)) return null;
  const fact = count(cursor, found.percent.to + 1, end + 1, "of", found.count, trials, unitAfter(cursor, end + 1));
  return [fact, found.percent];
}

/** "42 successes in 51 fractures". */
function eventForm(cursor: Cursor, i: number): Found {
  const successes = countAt(cursor, i);
  if (successes === null || unitOf(textAt(cursor, i + 1)) !== "event" || textAt(cursor, i + 2) !== "in") return null;
  let at = i + 3;
  while (at < i + 6 && determiners.has(textAt(cursor, at))) at++;
  const trials = countAt(cursor, at);
  const unit = unitAfter(cursor, at + 1);
  if (trials === null || trials < successes || !isCaseUnit(unit)) return null;
  return [count(cursor, i, at + 1, "of", successes, trials, unit)];
}

const isLimb = (unit: string | null): boolean => unit === "limb" || unit === "fracture";

const isYear = (cursor: Cursor, i: number): boolean => {
  const value = cursor.tokens[i]!.number!.value;
  return value >= 1950 && value <= 2100 && unitAfter(cursor, i + 1) === null;
};

/** "all but three of the 40 fractures": the others are counted. */
function allButForm(cursor: Cursor, i: number): Found {
  if (textAt(cursor, i) !== "all" || !["but", "except"].includes(textAt(cursor, i + 1))) return null;
  const missing = countAt(cursor, i + 2);
  const end = missing === null ? 0 : ofEnd(cursor, i + 3);
  const trials = end > 0 ? countAt(cursor, end) : null;
  if (missing === null || trials === null || missing > trials || trials === 0) return null;
  return [count(cursor, i, end + 1, "all", trials - missing, trials)];
}

function allForm(cursor: Cursor, i: number): Found {
  const text = textAt(cursor, i);
  if (text !== "all" && text !== "every" && text !== "each") return null;
  let at = i + 1;
  while (at < i + 5 && ["of", "the", "one", "our", "these"].includes(textAt(cursor, at))) at++;
  const trials = countAt(cursor, at);
  if (trials === null || trials < 2 || measures(cursor, at + 1) || countsOthers(cursor, at + 1)) return null;
  if (["/", "of", "out", "=", "-"].includes(textAt(cursor, at + 1))) return null;
  return [count(cursor, i, at + 1, "all", trials, trials)];
}

const clauseEnds = new Set([".", ";", ":", "(", ")", "but", "however", "whereas", "while"]);
/** Negations of an inference, not of an event: "no difference in 40 children" counts nothing. */
const inferences = new Set(
  "difference differences evidence association correlation relation relationship significant change statistically longer more less fewer better worse later".split(
    " ",
  ),
);

function noneForm(cursor: Cursor, i: number): Found {
  const text = textAt(cursor, i);
  if (text === "none" || text === "neither") return noneOf(cursor, i);
  if (text === "not" && textAt(cursor, i + 1) === "one" && ofEnd(cursor, i + 2) > 0) return noneOf(cursor, i + 1);
  if (text !== "no") return null;
  if (inferences.has(textAt(cursor, i + 1))) return null;
  for (let at = i + 1; at < i + 14; at++) {
    const token = cursor.tokens[at];
    if (!token || clauseEnds.has(token.text) || inferences.has(token.text)) return null;
    if (token.number && textAt(cursor, at - 1) !== "any") return null;
    if (!["in", "among", "amongst"].includes(token.text)) continue;
    let number = at + 1;
    while (number < at + 6 && (determiners.has(textAt(cursor, number)) || textAt(cursor, number) === "any")) number++;
    const trials = countAt(cursor, number);
    if (trials === null) continue;
    const unit = unitAfter(cursor, number + 1);
    const noun = textAt(cursor, number + 1);
    if (trials < 1 || !(unit || /^[a-z]{4,}s$/.test(noun)) || measures(cursor, number + 1)) return null;
    if (countsOthers(cursor, number + 1)) return null;
    return [count(cursor, i, number + 1, "none", 0, trials, unit)];
  }
  return null;
}

function noneOf(cursor: Cursor, i: number): Found {
  const end = ofEnd(cursor, i + 1);
  const trials = end > 0 ? countAt(cursor, end) : null;
  if (trials === null || trials < 1 || unitOf(textAt(cursor, end)) !== null) return null;
  return measures(cursor, end + 1) ? null : [count(cursor, i, end + 1, "none", 0, trials)];
}
