import type { Value } from "../types.js";
import { readMissing } from "./read-missing.js";
import { ask, leftOut, missing, type Choice, type Reader } from "./reading.js";

const none: Value = { kind: "list", items: [] };
const noneChoice: Choice = { label: "none", value: none };
const noneWords =
  /^(none|nil|no|n|0|nill|nothing|no compl?(ications?|s)?|without|nad|nil of note|none (seen|noted|found|observed)|uneventful|uncomplicated|keine?|aucune?|ninguna)[.!]?$/i;

/**
 * Complications as a list: "none", "nil", "0" are the empty list; several are split at ; , + / &. A blank, a dash and
 * "n/a" do not say that somebody looked: asked, because they decide who is in the denominator.
 */
export const readComplications: Reader = (text) => {
  if (text === "")
    return ask("blank", "", "blank: was nothing found, or nothing recorded?", [
      { label: "not recorded", value: missing("unknown") },
      noneChoice,
    ]);
  if (noneWords.test(text)) return { value: none, why: "none" };
  const gone = readMissing(text);
  const reason = gone?.value.kind === "missing" ? gone.value.reason : undefined;
  if (reason === "unknown" && !/[-–—.…_]/.test(text)) return gone!;
  if (reason === "lost" || reason === "died" || reason === "notDone") return gone!;
  if (reason !== undefined)
    return ask("value", text, `"${text}": was nothing found, or nothing recorded?`, [noneChoice, ...leftOut]);
  if (/^(y|yes|1|x|\?+|true|[✓✔+*])$/i.test(text) || /^\d+$/.test(text))
    return ask("value", text, `"${text}" does not name a complication: what does it mean?`, [
      { label: "a complication, not named", value: { kind: "list", items: ["not named"] } },
      noneChoice,
      ...leftOut,
    ]);
  const items = text
    .split(/\s*[;,+&]\s*|\s*\/\s*(?!\d)|\s+and\s+/i)
    .map((item) => item.trim().toLowerCase())
    .filter((item) => item !== "");
  const value: Value = { kind: "list", items };
  if (items.some((item) => /^(no|not|without|nil)\b/.test(item)) || /\?|^(see|as|cf\.?|same|ditto)\b/i.test(text))
    return ask("value", text, `"${text}" names a complication and a doubt or denial: did it happen?`, [
      { label: "it happened", value },
      noneChoice,
      ...leftOut,
    ]);
  return items.length === 1 && items[0] === text
    ? { value }
    : { value, why: items.length > 1 ? `${items.length} complications` : "one complication" };
};
