import type { CheckedText } from "../../claims/check-text.js";
import { lights, type Claim } from "../../claims/claim.js";
import { overall } from "../../claims/review-comments.js";
import { counted, listText } from "../number-text.js";
import type { TextTable } from "../text.js";
import type { Screen } from "./screen.js";

/** Slips that a screen has room for; all stand in the table. */
const told = 3;

/** Do its numbers hold? What the pasted text says of itself, by three lights a number. */
export function claimCheck(checked: CheckedText | null): Screen {
  const failing = (checked?.claims ?? []).filter((claim) => overall(claim) === "fails");
  return {
    id: "claim-check",
    question: "Do its numbers hold?",
    answer: [[tallyText(checked)], ...failing.slice(0, told).map((claim) => [slipText(claim)])],
    cautions: [["A number that fails may be a slip of the print: ask the authors. One that holds may still mislead."]],
    tables: checked === null ? [] : [claimsTable(checked)],
    notes: [
      "Paste the abstract beforehand. Read one sentence aloud and let the room do the sum before you open it.",
      "Say what holds, too.",
    ],
    minutes: 2,
  };
}

/** "5 numbers read: 3 hold, 1 fails and 1 cannot be checked." */
export function tallyText(checked: CheckedText | null): string {
  if (checked === null) return "No text yet: paste the abstract below.";
  const { claims } = checked;
  if (claims.length === 0) return "No number was read in the text.";
  const said = lights.flatMap((light) => {
    const n = claims.filter((claim) => overall(claim) === light).length;
    if (n === 0) return [];
    return [`${n} ${n === 1 || light === "cannot be checked" ? light : light.replace(/s$/, "")}`];
  });
  return `${counted(claims.length, "number")} read: ${listText(said)}.`;
}

/** A slip with its sum. */
export function slipText({ text, because }: Claim): string {
  return `“${oneLine(text)}”: ${because}`;
}

function claimsTable({ claims }: CheckedText): TextTable {
  return {
    caption: "Every number that was read",
    head: ["Printed", "Arithmetic", "Unit", "Conclusion", "The sum"],
    rows: claims.map((claim) => [
      oneLine(claim.text),
      claim.arithmetic,
      claim.unit,
      claim.conclusion,
      claim.because || "nothing printed lets this be recomputed",
    ]),
    notes: [],
  };
}

const oneLine = (text: string): string => text.replaceAll(/\s+/g, " ").trim();
