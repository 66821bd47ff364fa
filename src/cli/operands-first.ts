/**
 * Puts a space before an operand such as "-1/5", so that the parser takes it for a wrong count (exit status 1, with the
 * rule) and not for an unknown option. Readers of counts trim it again.
 */
export function operandsFirst(args: readonly string[]): string[] {
  return args.map((arg) => (/^-[\d.]/.test(arg) ? ` ${arg}` : arg));
}
