import { tableFindings, type AgreementOptions, type TableFindings } from "../../findings/agreement/table-findings.js";
import { tableAgreementText } from "../../report/agreement/table-agreement-text.js";
import { readRows } from "../counts/read-rows.js";
import { InputError } from "../input-error.js";

/**
 * Agreement from a table given as text.
 * @throws InputError naming row, column and rule
 */
export function analyseTable(
  text: string,
  options: AgreementOptions,
): { readonly result: TableFindings; readonly text: string } {
  const rows = readRows("agreement", text);
  if (rows[0]!.length !== rows.length)
    throw new InputError(
      `agreement: the table must be square, as both raters use the same grades; got ${rows.length} rows of ${rows[0]!.length} counts`,
    );
  if (rows.flat().every((count) => count === 0))
    throw new InputError("agreement: the table must count at least one radiograph, got only zeros");
  const result = tableFindings(rows, options);
  return { result, text: tableAgreementText(result) };
}
