/** The steps of the ladder of techniques, least invasive first. */
export const ladder = ["closed", "assisted", "open"] as const;
export type Step = (typeof ladder)[number];

/** Words of the trade for each step, in several languages; the first that fits wins: "closed with wire" is assisted. */
export const techniqueWords: readonly (readonly [Step, RegExp])[] = [
  [
    "assisted",
    /wire|\bpin(s|ned|ning)?\b|perc|perk|assist|k-?w\b|joystick|lever|crpp|cr ?\+ ?p[pf]?\b|k-?draht|spick|broche|embroch|aguja/i,
  ],
  ["open", /\bopen|orif|\bplate|surgical|offen|\bopnen?\b|ouvert|abiert|aperta|platte/i],
  [
    "closed",
    /closed|\bmua\b|manip|\bcast|\bsling|conserv|konserv|non-?op|\bcrif?\b|geschl|reponiert|repositi|ferm[eé]|cerrad|chiusa|gips|orthop[eé]di/i,
  ],
];

/** The step that a text names, if any. */
export function stepOf(text: string): Step | undefined {
  return techniqueWords.find(([, words]) => words.test(text))?.[0];
}

/** Every step that the parts of a text name, in the order in which they stand: "MUA, then open" is closed and open. */
export function stepsIn(text: string): readonly Step[] {
  const parts = text.split(
    /\s*(?:->|→|=>|>|[/,;+&()-]|\bthen\b|\bto\b|\bfailed\b|\battempted\b|\band\b|\bafter\b)\s*/i,
  );
  const found = parts.flatMap((part) => stepOf(part) ?? []);
  const whole = stepOf(text);
  return [...new Set(found.length > 0 ? found : whole === undefined ? [] : [whole])];
}
