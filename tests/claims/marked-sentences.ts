import { readFileSync } from "node:fs";
import { checkText } from "../../src/claims/check-text.js";
import type { Claim } from "../../src/claims/claim.js";

/** The sentences of a file in tests/reference: "+" before a sound one, "-" before one with a planted error. */
export const markedSentences = (file: string): { readonly sound: boolean; readonly text: string }[] =>
  readFileSync(new URL(`../reference/${file}`, import.meta.url), "utf8")
    .split("\n")
    .filter((line) => /^[+-] /.test(line))
    .map((line) => ({
      sound: line.startsWith("+"),
      text: line.slice(2).replaceAll("\\n", "\n").replaceAll("\\t", "\t"),
    }));

/** The claims of a text of which any light fails. */
export const failing = (text: string): Claim[] =>
  checkText(text).claims.filter((claim) => [claim.arithmetic, claim.unit, claim.conclusion].includes("fails"));
