/**
 * A coefficient of a whole set of radiographs, prepared so that it can be worked out again for any number of times that
 * each kind of radiograph counts: once each for the estimate, as drawn for a resample, one less for the jackknife.
 */
export interface PooledCoefficient {
  /** Kind of each radiograph; those of one kind are interchangeable. */
  readonly kindOf: Int32Array;
  /** How often each kind counts in the data. */
  readonly times: Float64Array;
  /** The coefficient; NaN when undefined, which no public function lets out. */
  readonly value: (times: Float64Array) => number;
}
