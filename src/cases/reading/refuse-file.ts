import { SheetError } from "../sheet-error.js";

/** What a file is by its first bytes, whatever its name says. */
export type FileKind = "text" | "archive";

const starts: readonly (readonly [string, string])[] = [
  ["25504446", "is a PDF document; copy its table into a sheet, or save the sheet it came from as .xlsx or .csv"],
  ["89504e47", "is a picture; type the table into a sheet and save it as .xlsx or .csv"],
  ["ffd8ff", "is a picture; type the table into a sheet and save it as .xlsx or .csv"],
  ["47494638", "is a picture; type the table into a sheet and save it as .xlsx or .csv"],
  ["7b5c727466", "is a rich-text document; save its table as .xlsx or .csv"],
  ["1f8b", "is a compressed archive; unpack it first"],
  ["377abcaf", "is a compressed archive; unpack it first"],
  ["526172211a", "is a compressed archive; unpack it first"],
];
const page = /^\s*(<!doctype html|<html|<\?xml|<table)/i;

/**
 * Tells text from workbook by content, and refuses what is neither.
 * @throws SheetError for an empty file, a password-protected or old workbook, a document, picture, page or other data
 */
export function refuseFile(bytes: Uint8Array, file: string): FileKind {
  const refuse = (rule: string): never => {
    throw new SheetError(file, [{ rule }]);
  };
  if (bytes.length === 0) refuse("is empty; expected a sheet with a heading row and cases");
  const hex = [...bytes.subarray(0, 8)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  if (hex.startsWith("504b")) return "archive";
  if (hex === "d0cf11e0a1b11ae1")
    refuse(
      holdsWide(bytes, "EncryptedPackage")
        ? "is protected by a password; open it, remove the password and save it again"
        : "is in the old .xls format; open it and save it as .xlsx",
    );
  for (const [start, rule] of starts) if (hex.startsWith(start)) refuse(rule);
  const head = new TextDecoder("latin1").decode(bytes.subarray(0, 400));
  if (page.test(head.replace(/^\u00ef\u00bb\u00bf/, "")))
    refuse("is a web page or XML, not a sheet; open it and save it as .xlsx or .csv");
  return "text";
}

/** Finds ASCII text stored as 16-bit characters, as directory names in a compound file are. */
function holdsWide(bytes: Uint8Array, name: string): boolean {
  const wanted = Array.from(name).flatMap((letter) => [letter.charCodeAt(0), 0]);
  const end = bytes.length - wanted.length;
  for (let at = 0; at <= end; at++) {
    let same = 0;
    while (same < wanted.length && bytes[at + same] === wanted[same]) same++;
    if (same === wanted.length) return true;
  }
  return false;
}
