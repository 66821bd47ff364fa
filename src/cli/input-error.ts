/** The input is wrong (exit status 1): the message names file, row, column and rule as far as they exist. */
export class InputError extends Error {
  override readonly name = "InputError";
}
