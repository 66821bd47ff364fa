import * as v from "valibot";
import { SheetError } from "./sheet-error.js";
import type { Answers } from "./types.js";

const schema = v.record(v.string(), v.union([v.string(), v.number(), v.boolean()]));

/**
 * Answers from the text of their JSON file: one object, the question's id to the choice taken or to a plain value.
 * Whether each fits its question is checked where the sheet is read.
 * @param file name of the file, for messages
 * @throws SheetError naming every entry that is no answer
 */
export function readAnswers(json: string, file: string): Answers {
  let parsed: unknown;
  try {
    parsed = JSON.parse(json.replace(/^\uFEFF/, ""));
  } catch {
    throw new SheetError(file, [{ rule: "is not JSON; expected one object of question and answer" }]);
  }
  if (typeof parsed !== "object" || parsed === null || Array.isArray(parsed))
    throw new SheetError(file, [{ rule: "must hold one object of question and answer" }]);
  const result = v.safeParse(schema, parsed);
  if (!result.success)
    throw new SheetError(
      file,
      result.issues.map(({ path }) => ({ column: `${path?.[0]?.key as string}`, rule: "the answer must be text" })),
    );
  return Object.fromEntries(Object.entries(result.output).map(([id, answer]) => [id, String(answer)]));
}
