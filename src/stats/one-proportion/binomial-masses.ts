import { binomialMass } from "../../numeric/binomial-mass.js";

/** Masses of consecutive counts, from the first that matters on. */
export interface BinomialMasses {
  readonly from: number;
  readonly masses: readonly number[];
}

/** All binomial masses above 1e-18 of the largest, by the ratio recurrence from the mode. Unguarded. */
export function binomialMasses(trials: number, p: number): BinomialMasses {
  const mode = Math.min(trials, Math.floor((trials + 1) * p));
  const odds = p / (1 - p);
  const top = binomialMass(mode, trials, p, 1 - p);
  const least = top * 1e-18;
  const below: number[] = [];
  let mass = top;
  for (let k = mode; k > 0 && mass > least; k--) {
    mass *= k / (trials - k + 1) / odds;
    below.push(mass);
  }
  const masses = below.reverse();
  const from = mode - masses.length;
  mass = top;
  masses.push(top);
  for (let k = mode; k < trials && mass > least; k++) {
    mass *= ((trials - k) / (k + 1)) * odds;
    masses.push(mass);
  }
  return { from, masses };
}
