import worked from "../reference/worked-examples.json" with { type: "json" };

/** One published example: what went in, where it stands, and each expected value as printed and as recomputed. */
export interface WorkedExample {
  readonly input: Readonly<Record<string, unknown>>;
  readonly citation: string;
  /** The value recomputed in high precision; it agrees with the printed one unless the test says otherwise. */
  readonly recomputed: (key: string) => number;
  /** The printed value, and half a unit of its last digit. */
  readonly printed: (key: string) => { readonly value: number; readonly half: number };
}

/** The example of tests/reference/worked-examples.json with this id. */
export function workedExample(id: string): WorkedExample {
  const example = worked.examples.find((candidate) => candidate.id === id);
  if (!example) throw new RangeError(`workedExample: no example has the id ${id}`);
  const find = (key: string): (typeof example.expected)[number] => {
    const found = example.expected.find((expected) => expected.key === key);
    if (!found) throw new RangeError(`workedExample: ${id} has no value ${key}`);
    return found;
  };
  return {
    input: example.input as Readonly<Record<string, unknown>>,
    citation: example.citation,
    recomputed: (key) => Number(find(key).recomputed),
    printed: (key) => {
      const text = String(find(key).published);
      const [digits = "", power = "0"] = text.toLowerCase().split("e");
      const decimals = digits.split(".")[1]?.length ?? 0;
      return { value: Number(text), half: 0.5 * 10 ** (Number(power) - decimals) };
    },
  };
}
