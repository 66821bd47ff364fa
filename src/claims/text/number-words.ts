const units =
  "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen";
const tens = "twenty thirty forty fifty sixty seventy eighty ninety";
const values = new Map<string, number>([
  ...units.split(" ").map((word, i): [string, number] => [word, i]),
  ...tens.split(" ").map((word, i): [string, number] => [word, 20 + 10 * i]),
  ["fourty", 40],
  ["dozen", 12],
]);

/**
 * The number that a run of words spells, from `words[from]` on, and how many words it took; null when none.
 * Understands "nine", "thirty-one", "thirty one", "a hundred", "one hundred and five", up to 999,999.
 * @example spelledNumber(["one", "hundred", "and", "five", "limbs"], 0) // => { value: 105, words: 4 }
 */
export function spelledNumber(words: readonly string[], from: number): { value: number; words: number } | null {
  const first = belowHundred(words, from);
  if (!first) return null;
  let { value, words: taken } = first;
  for (const [name, factor] of [
    ["hundred", 100],
    ["thousand", 1000],
  ] as const) {
    if (words[from + taken] !== name) continue;
    value *= factor;
    taken++;
    const joined = words[from + taken] === "and" ? 1 : 0;
    const rest = belowHundred(words, from + taken + joined);
    if (rest) {
      value += rest.value;
      taken += joined + rest.words;
    }
  }
  return { value, words: taken };
}

function belowHundred(words: readonly string[], at: number): { value: number; words: number } | null {
  const word = words[at];
  if (word === undefined) return null;
  const hyphen = word.indexOf("-");
  if (hyphen > 0) {
    const [left, right] = [values.get(word.slice(0, hyphen)), values.get(word.slice(hyphen + 1))];
    const sound =
      left !== undefined && right !== undefined && left >= 20 && left % 10 === 0 && right >= 1 && right <= 9;
    return sound ? { value: left + right, words: 1 } : null;
  }
  const value = values.get(word);
  if (value === undefined) return null;
  const next = values.get(words[at + 1] ?? "");
  if (value >= 20 && value % 10 === 0 && next !== undefined && next >= 1 && next <= 9)
    return { value: value + next, words: 2 };
  return { value, words: 1 };
}
