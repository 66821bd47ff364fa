import worked from "../../reference/worked-examples.json";

interface Example {
  readonly id: string;
  readonly citation: string;
  readonly input: Record<string, unknown>;
  readonly expected: readonly { readonly key: string; readonly published: string; readonly recomputed: string }[];
}

/** A published example by its id; `at(key)` is the value recomputed at high precision, which rounds to the printed one. */
export function example(id: string) {
  const found = (worked.examples as unknown as readonly Example[]).find((each) => each.id === id);
  if (!found) throw new RangeError(`no worked example has the id ${id}`);
  const at = (key: string): number => Number(found.expected.find((each) => each.key === key)!.recomputed);
  return { input: found.input, citation: found.citation, at };
}
