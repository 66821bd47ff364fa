import { tableFindings, type AgreementOptions, type TableFindings } from "../../findings/agreement/table-findings.js";
import { tableAgreementText } from "../../report/agreement/table-agreement-text.js";
import { coefficientText } from "../../report/agreement/coefficient-text.js";
import { cohenKappa, type KappaResult } from "../../stats/agreement/cohen-kappa.js";
import { readRows } from "../counts/read-rows.js";
import { InputError } from "../input-error.js";

/** With weights of one's own one more kappa. */
type TableAnalysis = Omit<TableFindings, "kappa"> & {
  readonly kappa: TableFindings["kappa"] & { readonly given?: KappaResult };
};

/**
 * Agreement from a table given as text.
 * @param options.weights disagreement weights, a row a grade, as text
 * @throws InputError naming row, column and rule; RangeError when the weights do not fit the table
 */
export function analyseTable(
  text: string,
  { weights, ...options }: AgreementOptions & { readonly weights?: string },
): { readonly result: TableAnalysis; readonly text: string } {
  const rows = readRows("agreement", text);
  if (rows[0]!.length !== rows.length)
    throw new InputError(
      `agreement: the table must be square, as both raters use the same grades; got ${rows.length} rows of ${rows[0]!.length} counts`,
    );
  if (rows.flat().every((count) => count === 0))
    throw new InputError("agreement: the table must count at least one radiograph, got only zeros");
  const found = tableFindings(rows, options);
  const words = tableAgreementText(found);
  if (weights === undefined) return { result: found, text: words };
  const given = cohenKappa(rows, { weights: { disagreement: readWeights(weights) }, level: options.level });
  return {
    result: { ...found, kappa: { ...found.kappa, given } },
    text: `${words}\nKappa, weights as given: ${coefficientText(given, options.level)}.`,
  };
}

function readWeights(text: string): number[][] {
  return text.split(";").map((row, i) =>
    row
      .trim()
      .split(/\s+/)
      .map((cell, j) => {
        const weight = cell === "" ? NaN : Number(cell);
        if (!Number.isFinite(weight))
          throw new InputError(
            `agreement: weights, row ${i + 1}, column ${j + 1}: must be a number of at least 0, got "${cell}"`,
          );
        return weight;
      }),
  );
}
