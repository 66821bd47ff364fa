import { withheld } from "./quarantine.js";

const suspect = /@|\d{7}|\d[ ()-]\d{3}|\d{3}[ -]\d{3}|\b(dob|born|geb|birth)/i;
const patterns: readonly RegExp[] = [
  /[\p{L}\p{N}._%+-]+@[\p{L}\p{N}.-]+\.\p{L}{2,}/gu,
  /(?<![\p{L}\d.,/-])\+?\d[\d ()-]{5,}\d(?![\d/.-])/gu,
  /(?<=\b(?:dob|d\.o\.b\.?|born|geb\.?|birth\w*)\P{N}{0,12})\d{1,4}[./-]\d{1,2}[./-]\d{1,4}/giu,
];

/** A text without e-mail addresses, telephone and record numbers and birth dates, whoever they belong to. */
export function maskText(text: string): string {
  if (text.length < 7 || !suspect.test(text)) return text;
  return patterns.reduce(
    (masked, pattern) => masked.replace(pattern, (found) => (harmless(found) ? found : withheld)),
    text,
  );
}

/** Dates, days in a row and short numbers identify nobody. */
function harmless(found: string): boolean {
  if (/[@/.]/.test(found)) return false;
  const digits = found.replace(/\D/g, "");
  if (/^(19|20)\d{2}-?\d{2}-?\d{2}$/.test(found) || /\d{4}-\d{2}-\d{2}|\d{1,2}-\d{1,2}-\d{4}/.test(found)) return true;
  if (/^\d+$/.test(found)) return digits.length < 7;
  // Several numbers side by side ("170 165 160") are readings; a telephone number starts with + or 0, or has long parts.
  return digits.length < 9 || !(/^[+0(]/.test(found) || /\d{3}[ -]\d{3}[ -]\d{4}/.test(found) || /\d{5,}/.test(found));
}
