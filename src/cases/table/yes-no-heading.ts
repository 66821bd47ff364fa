/** Headings whose yes or no decides who is counted: taken out of the study, kept in it, or lost to follow-up. */
export type Belonging = "exclusion" | "inclusion" | "loss" | "conversion";

const words: readonly (readonly [Belonging, RegExp])[] = [
  ["exclusion", /\bexclu|\bausgeschl|\binelig|\bnot (included|eligible)/i],
  [
    "inclusion",
    /\b(includ\w*|inclusion|eligib\w*|in (the )?study|evaluable|eingeschl\w*)\b|^(use|used|usable|include)\W*$/i,
  ],
  ["loss", /\b(lost|ltfu|lfu)\b(?!.*\b(reduc|position|motion))|\bloss to\b|\bdropp?ed ?out\b/i],
  ["conversion", /\bconver(ted|sion)\b/i],
];

/** What a yes under a heading says of the case, if it decides who is counted. */
export function belongingOf(name: string): Belonging | undefined {
  return words.find(([, pattern]) => pattern.test(name))?.[0];
}
