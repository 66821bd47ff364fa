import { InvalidArgumentError } from "commander";

/** A fraction between 0 and 1 from an option; anything else is a wrong call. */
export function fraction(text: string): number {
  const value = text.trim() === "" ? NaN : Number(text);
  if (!(value > 0 && value < 1)) throw new InvalidArgumentError("It must be a fraction between 0 and 1.");
  return value;
}
