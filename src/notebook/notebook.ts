import { Runtime } from "@observablehq/runtime";
import type { Cell } from "./cells.js";

/** What is told to whoever watches a cell. */
export interface Watcher<T> {
  /** The cell waits for its inputs; what was shown is out of date. */
  readonly pending?: () => void;
  readonly fulfilled: (value: T) => void;
  /** The cell or one above it failed; the message is for the reader. */
  readonly rejected: (message: string) => void;
}

/** Running cells: when one is set, those that stand on it follow. */
export interface Notebook<V> {
  /** The present value of a cell; rejects with its error. */
  readonly value: <K extends keyof V & string>(name: K) => Promise<V[K]>;
  /** @throws RangeError when the cell is computed from others */
  readonly set: <K extends keyof V & string>(name: K, value: V[K]) => void;
  /** @returns a function that ends the watching */
  readonly observe: <K extends keyof V & string>(name: K, watcher: Watcher<V[K]>) => () => void;
  readonly dispose: () => void;
}

/**
 * Starts the cells of a notebook.
 * @throws RangeError when two cells have one name or a cell stands on one that is not there
 */
export function startNotebook<V>(cells: readonly Cell<V>[]): Notebook<V> {
  const inputsOf = new Map(cells.map(({ name, inputs }) => [name as string, inputs]));
  check(cells, inputsOf);
  // Left to itself the runtime takes an unknown name for a global of the window.
  const runtime = new Runtime(null, (name) => {
    throw new RangeError(`notebook: no cell is named "${name}"`);
  });
  const module = runtime.module();
  for (const { name, inputs, compute } of cells) module.define(name, inputs, compute);
  return {
    value: <K extends keyof V & string>(name: K) => module.value(name) as Promise<V[K]>,
    set(name, value) {
      if (inputsOf.get(name)?.length !== 0)
        throw new RangeError(`notebook: only a cell without inputs can be set, got "${name}"`);
      module.redefine(name, [], () => value);
    },
    observe(name, { pending, fulfilled, rejected }) {
      // The runtime tells an observer once more when its variable is deleted.
      let watching = true;
      const variable = module
        .variable({
          ...(pending ? { pending } : {}),
          fulfilled: (value) => {
            if (watching) fulfilled(value as V[typeof name]);
          },
          rejected: (error) => rejected(error instanceof Error ? error.message : String(error)),
        })
        .define(null, [name], (value: unknown) => value);
      return () => {
        watching = false;
        variable.delete();
      };
    },
    dispose: () => runtime.dispose(),
  };
}

function check<V>(cells: readonly Cell<V>[], inputsOf: ReadonlyMap<string, readonly string[]>): void {
  if (inputsOf.size !== cells.length) throw new RangeError("notebook: two cells have the same name");
  for (const { name, inputs } of cells)
    for (const input of inputs)
      if (!inputsOf.has(input))
        throw new RangeError(`notebook: cell "${name}" stands on "${input}", which is not there`);
}
