import { allocates } from "./allocation-sums.js";
import type { SentenceReading } from "../reading/read-sentence.js";
import type { Place } from "../reading/facts.js";

const verbs = new Set(
  "comprised comprising comprise consisted consist divided classified graded distributed respectively total altogether".split(
    " ",
  ),
);
const families: readonly (readonly (readonly string[])[])[] = [
  [["boys", "boy", "male", "males", "men"], ["girls", "girl", "female", "females", "women"]],
  [["left", "left-sided"], ["right", "right-sided"]],
  [["closed"], ["open"]],
  [["yes"], ["no"]],
  [["dominant"], ["non-dominant", "nondominant"]],
]; // prettier-ignore
const reasons = new Set(
  "excluded lost withdrew died declined refused failed failures converted complications reoperations".split(" "),
);
const fourth = new Set(["iv", "4"]);
/** Words that own up to a list being partial. */
const partial = new Set(
  "including included mostly mainly especially notably plus least most such e.g also had underwent needed required".split(
    " ",
  ),
);

/**
 * Whether a list of parts claims to be complete: a verb of division, a bracket that ends in "and", all grades, both
 * sexes or sides, or reasons for leaving.
 */
export function isExhaustive(reading: SentenceReading, from: number, to: number, parts: readonly Place[]): boolean {
  const stretch = reading.tokens.slice(from, to + 6);
  const words = stretch.map(({ text }) => text);
  const all = reading.tokens.map(({ text }) => text);
  if (all.some((word) => verbs.has(word))) return true;
  if (families.some((sides) => sides.every((names) => names.some((name) => words.includes(name)))) && parts.length <= 3)
    return true;
  if (parts.length === 2 && (allocates(reading) || opposites(reading, parts))) return true;
  const grades = words.filter((word) => ["i", "ii", "iii", "iv", "v"].includes(word) || word === "grade");
  if (grades.length >= parts.length - 1 && parts.length >= 3)
    return words.some((word) => fourth.has(word)) || all.includes("iv");
  if (words.some((word) => partial.has(word))) return false;
  const opened = reading.tokens[from]?.text === "(" || reading.tokens[from]?.text === "[";
  const bracket = opened || reading.tokens.slice(from, parts[0]!.from).some(({ text }) => text === ":");
  if (!bracket) return false;
  if (all.slice(0, from).some((word) => reasons.has(word))) return true;
  const beforeLast = reading.tokens[parts.at(-1)!.from - 1]?.text;
  return beforeLast === "and" || beforeLast === "&" || parts.length >= 3;
}

/** "60 cemented, 54 uncemented", "62 with and 71 without": a class and its negation. */
function opposites({ tokens }: SentenceReading, parts: readonly Place[]): boolean {
  const [first, second] = parts.map(({ to }) => tokens[to]?.text ?? "");
  if (!first || !second) return false;
  const negated = (word: string): string[] =>
    ["un", "non-", "non", "in", "im", "a", "dis", "not-"].map((prefix) => prefix + word);
  const pairs = [["with", "without"], ["early", "late"], ["stable", "unstable"]]; // prettier-ignore
  return negated(first).includes(second) || negated(second).includes(first) || pairs.some((pair) => pair.includes(first) && pair.includes(second) && first !== second); // prettier-ignore
}
