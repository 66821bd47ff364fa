import { readMissing } from "./read-missing.js";
import type { Reader } from "./reading.js";
import { codedStaff } from "./staff.js";

/** Who operated: a code or rank as typed, a name as its code. */
export const readOperator: Reader = (text, facts) => {
  const gone = readMissing(text);
  if (gone) return gone;
  return { value: { kind: "text", text: facts.staff ? codedStaff(text, facts.staff) : text } };
};
