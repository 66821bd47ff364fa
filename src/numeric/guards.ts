/** Throws unless the value is a number (infinities allowed). */
export function requireNumber(caller: string, name: string, value: number): void {
  if (!(value <= Infinity)) throw new RangeError(`${caller}: ${name} must be a number, got ${value}`);
}

/** Throws unless the value is positive and finite. */
export function requirePositive(caller: string, name: string, value: number): void {
  if (!(value > 0 && value < Infinity))
    throw new RangeError(`${caller}: ${name} must be positive and finite, got ${value}`);
}

/** Throws unless the value is zero or more and finite. */
export function requireNotNegative(caller: string, name: string, value: number): void {
  if (!(value >= 0 && value < Infinity))
    throw new RangeError(`${caller}: ${name} must be zero or more and finite, got ${value}`);
}

/** Throws unless the value lies in [0, 1]. */
export function requireProbability(caller: string, name: string, value: number): void {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`${caller}: ${name} must lie in [0, 1], got ${value}`);
}

/** Throws unless the value is an integer below 2^53 in magnitude. */
export function requireInteger(caller: string, name: string, value: number): void {
  if (!Number.isSafeInteger(value)) throw new RangeError(`${caller}: ${name} must be an integer, got ${value}`);
}

/** Throws unless the value is an integer of zero or more, at most `most`. */
export function requireWhole(caller: string, name: string, value: number, most = Number.MAX_SAFE_INTEGER): void {
  if (Number.isSafeInteger(value) && value >= 0 && value <= most) return;
  const range = most === Number.MAX_SAFE_INTEGER ? "of at least 0" : `from 0 to ${most}`;
  throw new RangeError(`${caller}: ${name} must be an integer ${range}, got ${value}`);
}
