import { readMissing } from "./read-missing.js";
import { unreadable, type Choice, type Reader } from "./reading.js";

const female: Choice = { label: "female", value: { kind: "text", text: "female" } };
const male: Choice = { label: "male", value: { kind: "text", text: "male" } };

/** "female" or "male" in the usual spellings; numbers and other letters are asked. */
export const readSex: Reader = (text) => {
  const gone = readMissing(text);
  if (gone) return gone;
  const plain = text.toLowerCase().replace(/\.$/, "");
  if (plain === "female" || plain === "male") return { value: plain === "male" ? male.value : female.value };
  if (/^(f|fem|girl|girls|w|weiblich|woman)$/.test(plain)) return { value: female.value, why: "female" };
  if (/^(m|boy|boys|mannlich|männlich|man)$/.test(plain)) return { value: male.value, why: "male" };
  return unreadable(text, "a sex in letters", [female, male]);
};
