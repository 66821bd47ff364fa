import { requireNumbers } from "../guards.js";
import type { NotEstimable } from "../types.js";

/** One column of a model. */
export interface Covariate {
  readonly name: string;
  /** One number a row. */
  readonly values: readonly number[];
}

/** Rows of a logistic model: one case a row, or counts of like cases. */
export interface LogisticData {
  /** 0 or 1 a case; with `trials`, how many succeeded. */
  readonly successes: readonly number[];
  /** Cases a row; each 1 when left out. */
  readonly trials?: readonly number[];
  readonly covariates: readonly Covariate[];
}

/** Checked rows with the constant as first column, every column scaled to a largest size of 1. */
export interface Design {
  readonly names: readonly string[];
  readonly rows: number;
  readonly columns: number;
  /** Row by row. */
  readonly x: Float64Array;
  readonly successes: Float64Array;
  readonly trials: Float64Array;
  /** What a column was divided by. */
  readonly scales: Float64Array;
  readonly cases: number;
  readonly events: number;
}

export const constantName = "constant";

/**
 * The design of a logistic model, or null with the reason when a column can carry no estimate of its own.
 *
 * @param caller name of the public function, for messages
 * @throws RangeError when counts or lengths do not fit or a value is not finite; TypeError when a name is not unique
 */
export function logisticDesign(caller: string, data: LogisticData): Design | NotEstimable {
  const { successes, covariates } = data;
  const trials = data.trials ?? successes.map(() => 1);
  checkCounts(caller, successes, trials);
  checkCovariates(caller, covariates, successes.length);

  const names = [constantName, ...covariates.map(({ name }) => name)];
  const [rows, columns] = [successes.length, names.length];
  const scales = Float64Array.from([1, ...covariates.map(({ values }) => largest(values))]);
  const x = new Float64Array(rows * columns);
  for (let row = 0; row < rows; row++) {
    x[row * columns] = 1;
    covariates.forEach(({ values }, at) => (x[row * columns + at + 1] = values[row]! / scales[at + 1]!));
  }
  const because = dependentColumn(x, names, rows);
  if (because !== null) return { estimate: null, because };
  return {
    names,
    rows,
    columns,
    x,
    successes: Float64Array.from(successes),
    trials: Float64Array.from(trials),
    scales,
    cases: trials.reduce((sum, count) => sum + count, 0),
    events: successes.reduce((sum, count) => sum + count, 0),
  };
}

function checkCounts(caller: string, successes: readonly number[], trials: readonly number[]): void {
  requireNumbers(caller, "successes", successes, 1);
  requireNumbers(caller, "trials", trials, 1);
  if (trials.length !== successes.length)
    throw new RangeError(`${caller}: trials must be as many as successes (${successes.length}), got ${trials.length}`);
  successes.forEach((count, row) => {
    const of = trials[row]!;
    if (!(Number.isSafeInteger(of) && of >= 1))
      throw new RangeError(`${caller}: trials[${row}] must be an integer of at least 1, got ${of}`);
    if (!(Number.isSafeInteger(count) && count >= 0 && count <= of))
      throw new RangeError(`${caller}: successes[${row}] must be an integer from 0 to trials (${of}), got ${count}`);
  });
}

function checkCovariates(caller: string, covariates: readonly Covariate[], rows: number): void {
  const seen = new Set<string>([constantName]);
  for (const { name, values } of covariates) {
    if (seen.has(name)) throw new TypeError(`${caller}: covariate names must differ, got "${name}" twice`);
    seen.add(name);
    requireNumbers(caller, `covariate "${name}"`, values, 0);
    if (values.length !== rows)
      throw new RangeError(`${caller}: covariate "${name}" must hold ${rows} values, got ${values.length}`);
  }
}

const largest = (values: readonly number[]): number =>
  values.reduce((most, value) => Math.max(most, Math.abs(value)), 0) || 1;

/** Gram-Schmidt over the columns: the first one that the columns before it make up. */
function dependentColumn(x: Float64Array, names: readonly string[], rows: number): string | null {
  const columns = names.length;
  const basis: Float64Array[] = [];
  for (let column = 0; column < columns; column++) {
    const rest = Float64Array.from({ length: rows }, (_, row) => x[row * columns + column]!);
    const before = norm(rest);
    // Twice, so that rounding leaves nothing of the directions already taken.
    for (let pass = 0; pass < 2; pass++) for (const unit of basis) subtract(rest, unit);
    const after = norm(rest);
    if (!(after > 1e-9 * before)) return whyDependent(x, names, column, rows);
    basis.push(rest.map((value) => value / after));
  }
  return null;
}

function whyDependent(x: Float64Array, names: readonly string[], column: number, rows: number): string {
  const value = x[column]!;
  for (let row = 1; row < rows; row++)
    if (x[row * names.length + column] !== value)
      return `"${names[column]}" is made up by the columns before it (${names.slice(0, column).join(", ")})`;
  return `"${names[column]}" has the same value in every row`;
}

const norm = (vector: Float64Array): number => Math.sqrt(vector.reduce((sum, value) => sum + value * value, 0));

function subtract(from: Float64Array, unit: Float64Array): void {
  let along = 0;
  for (let row = 0; row < from.length; row++) along += from[row]! * unit[row]!;
  for (let row = 0; row < from.length; row++) from[row] = from[row]! - along * unit[row]!;
}
