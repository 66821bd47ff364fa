import { counted, decimalText, levelText, pText } from "../../report/number-text.js";
import type { TableAnalysis } from "./analyse-table.js";

/** The analysis of a table in sentences. */
export function tableText({ table, fisherFreemanHalton, chiSquare, trend }: TableAnalysis): string {
  const cases = table.flat().reduce((sum, count) => sum + count, 0);
  const lines = [
    `${counted(table.length, "row")} by ${counted(table[0]!.length, "column")}, ${counted(cases, "case")}.`,
  ];
  lines.push(freemanHaltonText(fisherFreemanHalton), chiSquareText(chiSquare));
  if (trend) lines.push(...trendTexts(trend));
  return lines.join("\n");
}

function freemanHaltonText(result: TableAnalysis["fisherFreemanHalton"]): string {
  if (result.p === null) return `Fisher-Freeman-Halton test: not computed, because ${result.because}.`;
  if (!("interval" in result)) return `Fisher-Freeman-Halton test: ${pText(result.p)} (exact).`;
  const { low, high } = result.interval;
  return (
    `Fisher-Freeman-Halton test: ${pText(result.p)}, estimated from ${result.simulated} random tables (seed ${result.seed}); ` +
    `the exact p lies between ${decimalText(low, 5)} and ${decimalText(high, 5)} (${levelText(result.level)} interval).`
  );
}

function chiSquareText(result: TableAnalysis["chiSquare"]): string {
  if (result.p === null) return `Chi-square test: not possible, because ${result.because}.`;
  const { statistic, df, p, smallestExpected } = result;
  const rough = smallestExpected < 5 ? `, but the smallest expected count is ${decimalText(smallestExpected, 1)}` : "";
  return `Chi-square test: ${decimalText(statistic, 2)} on ${counted(df, "degree")} of freedom, ${pText(p)}${rough}.`;
}

function trendTexts({ exact, asymptotic }: NonNullable<TableAnalysis["trend"]>): string[] {
  const large =
    asymptotic.p === null
      ? `Large-sample trend: not possible, because ${asymptotic.because}.`
      : `Large-sample trend: z ${decimalText(asymptotic.z, 2)}, ${pText(asymptotic.p)}; the first column's share ${directionText(asymptotic.z)} from row to row.`;
  const small =
    exact.pointProbability === null
      ? `Exact trend: not computed, because ${exact.because}.`
      : `Exact trend over the row numbers: ${pText(exact.pointProbability)} adding up the results that are no likelier, ${pText(exact.doubled)} doubling the smaller tail.`;
  return [small, large];
}

function directionText(z: number): string {
  if (z === 0) return "neither rises nor falls";
  return z > 0 ? "rises" : "falls";
}
