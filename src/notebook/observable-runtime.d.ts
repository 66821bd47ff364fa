// Types of @observablehq/runtime 6.0.1, which ships none: what notebooks use of it.
declare module "@observablehq/runtime" {
  export interface Observer<T = unknown> {
    pending?(): void;
    fulfilled?(value: T, name: string | null): void;
    rejected(error: unknown, name: string | null): void;
  }
  export class Variable {
    define(name: string | null, inputs: readonly string[], definition: (...inputs: never[]) => unknown): this;
    delete(): this;
  }
  export class Module {
    variable(observer?: Observer): Variable;
    define(name: string, inputs: readonly string[], definition: (...inputs: never[]) => unknown): Variable;
    redefine(name: string, inputs: readonly string[], definition: (...inputs: never[]) => unknown): Variable;
    value(name: string): Promise<unknown>;
  }
  export class Runtime {
    constructor(builtins: Record<string, unknown> | null, global: (name: string) => unknown);
    module(): Module;
    dispose(): void;
  }
}
