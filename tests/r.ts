import { inject } from "vitest";

/**
 * Evaluates R code (R through webr, base packages) whose value is a numeric vector, and returns the vector.
 * Send many cases in one expression: each call costs a round trip.
 * @throws Error with R's own message
 * @example await r("sapply(0:3, function(x) binom.test(x, 3)$p.value)")
 */
export async function r(code: string): Promise<number[]> {
  const response = await fetch(inject("rAddress"), { method: "POST", body: code });
  if (!response.ok) throw new Error(await response.text());
  const values = (await response.json()) as (number | string)[];
  return values.map(Number);
}
