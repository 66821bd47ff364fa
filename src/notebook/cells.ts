/** A named value and the cells it is computed from. `V` maps every cell name of a notebook to its type. */
export interface Cell<V> {
  readonly name: keyof V & string;
  readonly inputs: readonly (keyof V & string)[];
  readonly compute: (...inputs: never[]) => unknown;
}

/** Cell maker for one notebook: names, inputs and results are checked against `V`. A cell without inputs can be set. */
export const cellsOf =
  <V>() =>
  <K extends keyof V & string, const I extends readonly (keyof V & string)[]>(
    name: K,
    inputs: I,
    compute: (...inputs: { readonly [J in keyof I]: I[J] extends keyof V ? V[I[J]] : never }) => V[K] | Promise<V[K]>,
  ): Cell<V> => ({ name, inputs, compute });
