import { type Cursor, percentEnd, take, textAt } from "./cursor.js";
import { measures, unitAfter } from "./units.js";

const naming = new Set(
  "grade grades type types stage stages table tables figure figures fig figs class level zone observer observers rater raters reader readers series reference references ref refs step appendix phase chapter version ao visit".split(
    " ",
  ),
);
const joining = new Set(["and", "or", "to", ",", "-", "v", "vs", "&"]);

/** Sets aside numbers that are names ("grade 3", "Table 2"), dates and years, so that nothing counts them. */
export function takeLabels(cursor: Cursor): void {
  for (let i = 0; i < cursor.tokens.length; i++) {
    if (naming.has(textAt(cursor, i))) takeNames(cursor, i + 1);
    else if (isYear(cursor, i)) take(cursor, { from: i, to: i + 1 });
    else if (isOneIn(cursor, i) || isRatio(cursor, i)) take(cursor, { from: i, to: i + 3 });
    else if (textAt(cursor, i) === "three" && textAt(cursor, i - 1) === "of" && textAt(cursor, i - 2) === "rule")
      take(cursor, { from: i, to: i + 1 });
    else if (isBetween(cursor, i)) take(cursor, { from: i + 1, to: i + 4 });
    else if (cursor.tokens[i]!.number && textAt(cursor, i + 1) === "-" && /^(sided|tailed)/.test(textAt(cursor, i + 2)))
      take(cursor, { from: i, to: i + 1 });
    else if (isThreshold(cursor, i) || isSided(cursor, i)) take(cursor, { from: i, to: i + 1 });
  }
}

/** "grades 1, 2 and 3": small bare numbers after the name, joined by commas and "and". */
function takeNames(cursor: Cursor, from: number): void {
  let at = textAt(cursor, from) === "." ? from + 1 : from;
  while (isName(cursor, at)) {
    take(cursor, { from: at, to: at + 1 });
    at++;
    const first = at;
    while (joining.has(textAt(cursor, at)) && at < first + 2) at++;
    // "grade 3 in 14" and "grade 3, 14 fractures" end the names: the next number must be the next one up.
    const [here, next] = [cursor.tokens[first - 1]?.number?.value ?? 0, cursor.tokens[at]?.number?.value ?? 0];
    const follows = !["%", "/", "of", "("].includes(textAt(cursor, at + 1)) && unitAfter(cursor, at + 1) === null;
    if (at === first || next <= here || next > here + 3 || !follows) return;
  }
}

/** "One in eight": a proportion in words. */
const isOneIn = (cursor: Cursor, i: number): boolean =>
  !cursor.taken[i] &&
  textAt(cursor, i + 1) === "in" &&
  isName(cursor, i + 2) &&
  (cursor.tokens[i]!.number?.value === 1 || (isSmall(cursor, i) && isSmall(cursor, i + 2)));

/** "Nine in ten": small numbers in words. */
const isSmall = (cursor: Cursor, i: number): boolean =>
  cursor.tokens[i]!.spelled && (cursor.tokens[i]!.number?.value ?? 99) <= 10 && unitAfter(cursor, i + 1) === null;

/** "A ratio of men to women of 1.6:1". */
function isRatio(cursor: Cursor, i: number): boolean {
  const [first, second] = [cursor.tokens[i]?.number, cursor.tokens[i + 2]?.number];
  if (!first || !second || textAt(cursor, i + 1) !== ":" || cursor.tokens[i + 2]!.spaced) return false;
  return (
    first.decimals > 0 ||
    second.value === 1 ||
    cursor.tokens.slice(Math.max(0, i - 10), i).some(({ text }) => text === "ratio")
  );
}

/** "between 1 and 3 of 5": a range of counts. */
const isBetween = (cursor: Cursor, i: number): boolean =>
  textAt(cursor, i) === "between" &&
  isName(cursor, i + 1) &&
  textAt(cursor, i + 2) === "and" &&
  isName(cursor, i + 3) &&
  textAt(cursor, i + 4) === "of";

/** "2-sided", "1-tailed". */
const isSided = (cursor: Cursor, i: number): boolean =>
  cursor.tokens[i]!.number !== null &&
  textAt(cursor, i + 1) === "-" &&
  ["sided", "tailed"].includes(textAt(cursor, i + 2));

/** "At the 5% level", "with 80% power": set beforehand, no result. */
function isThreshold(cursor: Cursor, i: number): boolean {
  if (!cursor.tokens[i]!.number) return false;
  const after = percentEnd(cursor, i + 1);
  const next = textAt(cursor, after);
  return next === "level"
    ? textAt(cursor, i - 1) === "the"
    : after > i + 1 && (next === "power" || next === "significance");
}

const isName = (cursor: Cursor, at: number): boolean => {
  const number = cursor.tokens[at]?.number;
  return number !== null && number !== undefined && number.decimals === 0 && number.value >= 0 && number.value < 100;
};

const aroundYears = new Set(
  "in since until from between to and during january february march april may june july august september october november december - – year".split(
    " ",
  ),
);

const months = new Set(
  "january february march april may june july august september october november december".split(" "),
);

function isYear(cursor: Cursor, i: number): boolean {
  const token = cursor.tokens[i]!;
  const value = token.number?.value ?? 0;
  if (value < 1950 || value > 2100 || token.number!.decimals > 0 || token.end - token.start !== 4) return false;
  if (months.has(textAt(cursor, i - 1))) return true;
  return aroundYears.has(textAt(cursor, i - 1)) && unitAfter(cursor, i + 1) === null && !measures(cursor, i + 1);
}
