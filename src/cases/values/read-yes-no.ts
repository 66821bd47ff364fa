import { readMissing } from "./read-missing.js";
import { showValue } from "../show-value.js";
import type { Value } from "../types.js";
import { ask, leftOut, limbChoices, type Choice, type Reader } from "./reading.js";

const yesWords = /^(y|yes|yeah|yep|true|ja|j|oui|o|si|sí)[.!]?$/i;
const noWords = /^(n|no|nope|false|nein|non)[.!]?$/i;
const goodWords = /^(success(ful|fully)?|succeeded|achieved|worked)$/i;
const badWords = /^(fail(ed|ure)?|unsuccessful|not successful|not achieved|no success)$/i;

const yes: Choice = { label: "yes", value: { kind: "yesNo", yes: true } };
const no: Choice = { label: "no", value: { kind: "yesNo", yes: false } };

/**
 * Yes or no in the usual spellings. Ticks, crosses, question marks, 1 and 0, and every other word are asked: their meaning
 * depends on who typed them. A blank stays missing.
 */
export const readYesNo: Reader = (text, facts, cell) => {
  if (cell.boolean !== undefined) return { value: cell.boolean ? yes.value : no.value };
  if (text !== "-" && text !== "–") {
    const gone = readMissing(text);
    if (gone) return gone;
  }
  if (yesWords.test(text)) return { value: yes.value, ...(text.toLowerCase() === "yes" ? {} : { why: "yes" }) };
  if (noWords.test(text)) return { value: no.value, ...(text.toLowerCase() === "no" ? {} : { why: "no" }) };
  const negative = negativeHeading(facts.name);
  if (negative && /^(none|nil|never|not (seen|found)|absent|keine?)[.!]?$/i.test(text))
    return { value: no.value, why: "none" };
  if (goodWords.test(text))
    return negative
      ? { value: no.value, why: "success, so no under this heading" }
      : { value: yes.value, why: "success" };
  if (badWords.test(text))
    return negative
      ? { value: yes.value, why: "failure, so yes under this heading" }
      : { value: no.value, why: "failure" };
  if (/^[9]{1,4}$|^-\d+$/.test(text)) return ask("code", text, `${text}: a code for missing?`, [...leftOut, yes, no]);
  const pair = /^(y|n|yes|no)\s*[/|,]\s*(y|n|yes|no)$/i.exec(text);
  if (pair) {
    const [first, second] = [pair[1]!, pair[2]!].map((part) => (/^y/i.test(part) ? yes.value : no.value)) as [
      Value,
      Value,
    ];
    return ask("pair", text, `"${text}" holds two values: one for each limb?`, [
      ...limbChoices(first, second, showValue),
      yes,
      no,
      ...leftOut,
    ]);
  }
  const sign = /^[^\p{L}\d]+$|^[x10]$/iu.test(text);
  const says = sign
    ? `under "${facts.name}", what does "${text}" mean?`
    : `"${text}" is neither yes nor no under "${facts.name}": which?`;
  return ask("value", text, says, [yes, no, ...leftOut]);
};

/** A heading under which a yes is bad news. */
export function negativeHeading(name: string): boolean {
  return /\b(fail\w*|re-?displac\w*|lost|loss|revision|reoperat\w*|non-?union|malunion|unsuccessful|poor)\b/i.test(
    name,
  );
}
