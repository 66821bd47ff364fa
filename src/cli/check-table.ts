import Table from "cli-table3";
import type { CheckedText } from "../claims/check-text.js";
import type { Claim } from "../claims/claim.js";

const words = { holds: "✓ holds", fails: "✗ fails", "cannot be checked": "? open" } as const;

/** The checked claims as a table for people, one row a claim, then what was not understood. */
export function checkTable({ claims, denominators, notUnderstood, styleHints = [] }: CheckedText): string {
  const table = new Table({
    head: ["claim", "arithmetic", "unit", "conclusion", "the sum"],
    colWidths: [34, 12, 12, 12, 60],
    wordWrap: true,
    style: { head: [], border: [] },
  });
  for (const claim of claims)
    table.push([
      oneLine(claim.text),
      words[claim.arithmetic],
      words[claim.unit],
      words[claim.conclusion],
      claim.because,
    ]);
  const lines = [summary(claims), claims.length > 0 ? table.toString() : ""];
  const ladder = denominators.map(
    ({ value, unit, change }) =>
      `${value}${unit ? ` (${unit})` : ""}${change ? ` [${change > 0 ? "+" : "−"}${Math.abs(change)}]` : ""}`,
  );
  if (ladder.length > 0) lines.push(`Denominators in order: ${ladder.slice(0, 40).join(", ")}`);
  if (notUnderstood.length > 0)
    lines.push(
      `Not understood: ${notUnderstood
        .slice(0, 40)
        .map(({ text }) => text)
        .join(", ")}`,
    );
  if (styleHints.length > 0)
    lines.push("Wording (no verdict):", ...styleHints.map(({ text, hint }) => `  "${oneLine(text)}": ${hint}`));
  return lines.filter(Boolean).join("\n");
}

const oneLine = (text: string): string => text.replaceAll(/\s+/g, " ");

function summary(claims: readonly Claim[]): string {
  const failing = claims.filter(
    (claim) => claim.arithmetic === "fails" || claim.unit === "fails" || claim.conclusion === "fails",
  ).length;
  const holding = claims.filter((claim) => claim.arithmetic === "holds").length;
  return `${claims.length} claim${claims.length === 1 ? "" : "s"} read: ${holding} hold in their arithmetic, ${failing} to ask about.`;
}
