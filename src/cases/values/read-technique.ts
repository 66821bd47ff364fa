import type { Value } from "../types.js";
import { readMissing } from "./read-missing.js";
import { ladder, stepOf, stepsIn } from "./technique-words.js";
import { ask, notKnown, type Choice, type Reader } from "./reading.js";

const attempt =
  /(failed|attempted|tried|trial of|after|initially|converted|conversion|->|→|=>|\bthen\b|\bto open\b|unsuccessful)/i;

/**
 * A technique as named, case folded. A cell that tells of an earlier attempt ("open (failed closed x2)") is asked: what
 * was tried first decides which group the case counts in.
 */
export const readTechnique: Reader = (text) => {
  const gone = readMissing(text);
  if (gone) return gone;
  const plain = text.toLowerCase().replace(/\s*[.;,]+$/, "");
  const choice = (name: string): Choice => ({ label: `first technique ${name}`, value: { kind: "text", text: name } });
  if (attempt.test(plain) || twoSteps(plain)) {
    const named = stepsIn(plain);
    return ask("attempt", text, `"${text}" tells of an earlier attempt: what was tried first?`, [
      ...(named.length > 0 ? named : ladder).map(choice),
      notKnown,
    ]);
  }
  if (/\?|^\d+$|^x$/.test(plain))
    return ask("value", text, `"${text}": which technique was tried first?`, [
      choice("closed"),
      choice("assisted"),
      choice("open"),
      notKnown,
    ]);
  const value: Value = { kind: "text", text: plain };
  return plain === text ? { value } : { value, why: "spelling folded" };
};

/** "closed/open", "MUA - ORIF": both ends of the ladder in one cell; "closed + wire" is one technique. */
function twoSteps(text: string): boolean {
  const parts = text.split(/\s*[/>,;]\s*|\s+(?:-|–|and)\s+/).filter((part) => part !== "");
  const steps = new Set(parts.map(stepOf));
  return parts.length > 1 && steps.has("closed") && steps.has("open");
}
