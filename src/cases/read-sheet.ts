import { readText } from "./reading/read-text.js";
import { readWorkbook } from "./reading/read-workbook.js";
import { refuseFile } from "./reading/refuse-file.js";
import type { RawSheet } from "./types.js";

/**
 * Reads a file as it stands, nothing interpreted: .csv, .tsv and other text, .xlsx and .ods, told apart by content.
 * @param bytes the whole file
 * @param file its name, for messages
 * @param options.sheet name of the sheet in a workbook; by default the fullest visible one with a heading of cases
 * @throws SheetError when it is empty, damaged, protected, too large, or no sheet
 */
export async function readSheet(
  bytes: Uint8Array,
  file: string,
  options: { readonly sheet?: string } = {},
): Promise<RawSheet> {
  const name = file.replace(/^.*[\\/]/, "");
  if (refuseFile(bytes, name) === "archive") return readWorkbook(bytes, name, options.sheet);
  if (options.sheet !== undefined)
    throw new RangeError(`readSheet: sheet can only be named for a workbook, got "${options.sheet}" for ${name}`);
  return readText(bytes, name);
}
