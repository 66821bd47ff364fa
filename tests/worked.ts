import { expect } from "vitest";
import reference from "./reference/worked-examples.json";

interface Example {
  readonly id: string;
  readonly citation: string;
  readonly input: Readonly<Record<string, unknown>>;
  readonly expected: readonly {
    readonly key: string;
    readonly label?: string;
    readonly published: string | string[];
    readonly recomputed: string;
    readonly comparison: string;
  }[];
}

/**
 * One printed value of a published worked example, with its check: to half a unit of the last printed digit where the
 * recomputation agrees with the print, else to the high-precision recomputation alone; always to that to 1e-9, or the
 * tolerance that the recomputation itself can hold.
 */
export function worked(id: string, key: string) {
  const example = (reference.examples as readonly unknown[] as readonly Example[]).find((e) => e.id === id);
  const value = example?.expected.find((e) => e.key === key);
  if (!example || !value) throw new Error(`no worked example ${id} ${key}`);
  const { recomputed, comparison } = value;
  const published = String(value.published);
  return {
    published,
    check(actual: number, tolerance = 1e-9): void {
      const of = `${example.citation}: ${value.label ?? key}`;
      const target = Number(recomputed);
      expect(Math.abs(actual - target), of).toBeLessThanOrEqual(tolerance * Math.max(Math.abs(target), 1e-6));
      if (comparison === "agrees")
        expect(Math.abs(actual - Number(published)), of).toBeLessThanOrEqual(halfUnit(published));
    },
  };
}

/** What went into a published worked example. */
export function workedInput<Input>(id: string): Input {
  const example = (reference.examples as readonly unknown[] as readonly Example[]).find((e) => e.id === id);
  if (!example) throw new Error(`no worked example ${id}`);
  return example.input as Input;
}

function halfUnit(printed: string): number {
  const [mantissa = "", exponent = "0"] = printed.toLowerCase().split("e");
  const decimals = mantissa.split(".")[1]?.length ?? 0;
  return 0.5000001 * 10 ** (Number(exponent) - decimals);
}
