/** Throws unless `0 <= successes <= trials`, `trials >= 1`, both integers below 2^53. */
export function requireCount(caller: string, successes: number, trials: number, name = ""): void {
  if (
    Number.isSafeInteger(trials) &&
    Number.isSafeInteger(successes) &&
    successes >= 0 &&
    successes <= trials &&
    trials > 0
  )
    return;
  const of = name ? `${name}.` : "";
  if (!(Number.isSafeInteger(trials) && trials >= 1))
    throw new RangeError(`${caller}: ${of}trials must be an integer of at least 1, got ${trials}`);
  throw new RangeError(
    `${caller}: ${of}successes must be an integer from 0 to ${of}trials (${trials}), got ${successes}`,
  );
}

/** Throws unless the level lies strictly between 0 and 1. */
export function requireLevel(caller: string, level: number): void {
  if (!(level > 0 && level < 1)) throw new RangeError(`${caller}: level must lie between 0 and 1, got ${level}`);
}

/** Throws a TypeError naming the first option that is not known, so that a misspelt one is never ignored. */
export function requireOptions(caller: string, options: object, known: readonly string[]): void {
  for (const name of Object.keys(options))
    if (!known.includes(name))
      throw new TypeError(`${caller}: no option is named "${name}" (known: ${known.join(", ")})`);
}

/** Throws unless there are at least `atLeast` values and each is a finite number; the message names the first that is not. */
export function requireNumbers(caller: string, name: string, values: readonly number[], atLeast: number): void {
  if (values.length < atLeast)
    throw new RangeError(`${caller}: ${name} must hold at least ${atLeast}, got ${values.length}`);
  const wrong = values.findIndex((value) => !Number.isFinite(value));
  if (wrong >= 0) throw new RangeError(`${caller}: ${name}[${wrong}] must be a finite number, got ${values[wrong]}`);
}
