import type { Count } from "../../stats/types.js";
import { InputError } from "../input-error.js";

/**
 * Successes of trials from text such as "21/23".
 * @throws InputError beginning with `what`, naming the text and the rule
 */
export function readCount(what: string, text: string): Count {
  const written = text.trim();
  const parts = /^(\d+)\s*\/\s*(\d+)$/.exec(written);
  if (!parts)
    throw new InputError(`${what}: must be two whole numbers, successes/trials such as 21/23, got "${written}"`);
  const successes = Number(parts[1]);
  const trials = Number(parts[2]);
  if (!(Number.isSafeInteger(trials) && trials >= 1))
    throw new InputError(`${what}: trials must be a whole number from 1 to 9007199254740991, got "${written}"`);
  if (successes > trials) throw new InputError(`${what}: successes must not exceed trials, got "${written}"`);
  return { successes, trials };
}
