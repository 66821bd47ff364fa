import { cholesky, inverseOf } from "./cholesky.js";
import type { Evaluation, Likelihood } from "./likelihood.js";

export interface Maximum {
  readonly beta: Float64Array;
  readonly at: Evaluation;
  readonly iterations: number;
}

const longestStep = 5;

/**
 * Highest point of a likelihood by Newton-like scoring with step halving, some parameters held where they start, or null when it was
 * not reached: a caller never gets a fit that did not converge.
 *
 * @param options.start first point; the held parameters keep their values
 * @param options.held indices of the parameters that do not move; default none
 * @param options.mostIterations default 300
 */
export function maximise(
  likelihood: Likelihood,
  options: { readonly start: Float64Array; readonly held?: readonly number[]; readonly mostIterations?: number },
): Maximum | null {
  const { start, held = [], mostIterations = 300 } = options;
  const free = Array.from({ length: likelihood.size }, (_, j) => j).filter((j) => !held.includes(j));
  let beta: Float64Array = start.slice();
  let at: Evaluation | null = likelihood.evaluate(beta);
  if (at === null) return null;
  for (let iteration = 1; iteration <= mostIterations; iteration++) {
    const step = scoringStep(at, free, likelihood.size);
    if (step === null) return null;
    const length = free.reduce((most, j) => Math.max(most, Math.abs(step[j]!)), 0);
    const size = free.reduce(
      (most, j) => Math.max(most, Math.abs(step[j]!) * Math.sqrt(Math.abs(at!.curvature[j * likelihood.size + j]!))),
      0,
    );
    // After many steps only rounding is left to move it.
    if (size < (iteration < 60 ? 1e-12 : 1e-9)) return { beta, at, iterations: iteration };
    const taken: { beta: Float64Array; at: Evaluation } | null = halved(likelihood, {
      beta,
      at,
      step,
      fraction: Math.min(1, longestStep / length),
      near: size < 1e-3,
    });
    // No higher point along the step: at the limit of the arithmetic that is the top, elsewhere a failure.
    if (taken === null) return size < 1e-7 ? { beta, at, iterations: iteration } : null;
    ({ beta, at } = taken);
  }
  return null;
}

/** Inverse curvature over the free parameters times their score; 0 for the held ones. */
function scoringStep(at: Evaluation, free: readonly number[], size: number): Float64Array | null {
  const inverse = free.length === size ? at.curvatureInverse : inverseOver(at, free, size);
  if (inverse === null) return null;
  const step = new Float64Array(size);
  free.forEach((j, row) => {
    let sum = 0;
    free.forEach((k, column) => (sum += inverse[row * free.length + column]! * at.score[k]!));
    step[j] = sum;
  });
  return step;
}

function inverseOver(at: Evaluation, free: readonly number[], size: number): Float64Array | null {
  for (const curvature of [at.curvature, ...(at.uphill ?? [])]) {
    const part = new Float64Array(free.length ** 2);
    free.forEach((j, row) =>
      free.forEach((k, column) => (part[row * free.length + column] = curvature[j * size + k]!)),
    );
    const factor = cholesky(part, free.length);
    if (factor !== null) return inverseOf(factor);
  }
  return null;
}

function halved(
  likelihood: Likelihood,
  from: {
    readonly beta: Float64Array;
    readonly at: Evaluation;
    readonly step: Float64Array;
    readonly fraction: number;
    readonly near: boolean;
  },
): { beta: Float64Array; at: Evaluation } | null {
  // So near the top the score is a better guide than the value, whose rounding error a step does not pass.
  const slack = from.near ? Infinity : 1e-13 * (1 + Math.abs(from.at.value));
  for (let fraction = from.fraction; fraction > from.fraction * 1e-6; fraction /= 2) {
    const beta = from.beta.map((value, j) => value + fraction * from.step[j]!);
    const at = likelihood.evaluate(beta);
    if (at !== null && at.value >= from.at.value - slack) return { beta, at };
  }
  return null;
}
