import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { uniformInt } from "pure-rand/distribution/uniformInt";
import { mersenne } from "pure-rand/generator/mersenne";
import { requireWhole } from "./guards.js";

/** A seeded stream of random numbers: the same seed gives the same stream in Node and in every browser. */
export interface Random {
  /** Uniform in [0, 1), a multiple of 2^-53. */
  readonly uniform: () => number;
  /** Uniform among the integers 0 to n - 1, without bias. */
  readonly below: (n: number) => number;
  /** A new array with the same items in random order. */
  readonly shuffled: <Item>(items: readonly Item[]) => Item[];
}

/**
 * A random stream from a seed.
 *
 * @param seed integer, 0 to 2^32 - 1
 * @throws RangeError when the seed is out of range, or when `below` is asked for less than one integer
 * @see Matsumoto and Nishimura 1998, ACM Trans Model Comput Simul 8:3-30 (MT19937); shuffle of Durstenfeld 1964,
 * Commun ACM 7:420
 * @example random(42).below(6) === random(42).below(6) // => true
 */
export function random(seed: number): Random {
  requireWhole("random", "seed", seed, 2 ** 32 - 1);
  const generator = mersenne(seed);
  const below = (n: number): number => {
    if (!(Number.isSafeInteger(n) && n >= 1))
      throw new RangeError(`random: below must be given an integer of at least 1, got ${n}`);
    return uniformInt(generator, 0, n - 1);
  };
  return {
    uniform: () => uniformFloat64(generator),
    below,
    shuffled: (items) => {
      const order = [...items];
      for (let i = order.length - 1; i > 0; i--) {
        const j = below(i + 1);
        [order[i], order[j]] = [order[j]!, order[i]!];
      }
      return order;
    },
  };
}
