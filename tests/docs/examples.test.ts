// oxlint-disable no-new-func, typescript/no-implied-eval -- the examples of the documentation are run here
// Runs each `@example expression // => value` of src/ so that documentation cannot drift from the code.
import { expect, test } from "vitest";

const sources = import.meta.glob("../../src/{numeric,stats}/**/*.ts", {
  query: "?raw",
  import: "default",
  eager: true,
}) as Record<string, string>;
const modules = import.meta.glob("../../src/{numeric,stats}/**/*.ts", { eager: true }) as Record<
  string,
  Record<string, unknown>
>;

/** Numbers agree to the digits that the example prints, in fixed or in scientific notation. */
function close(actual: unknown, claimed: unknown, printed: string): void {
  if (typeof claimed === "number") {
    if (Number.isInteger(claimed) || !Number.isFinite(claimed)) expect(actual, printed).toBe(claimed);
    else {
      const digits = String(claimed).replace(/e.*$/, "").replace(/[-.]/g, "").replace(/^0+/, "").length;
      expect((actual as number).toPrecision(digits), printed).toBe(claimed.toPrecision(digits));
    }
  } else if (claimed !== null && typeof claimed === "object")
    for (const [key, value] of Object.entries(claimed)) close((actual as Record<string, unknown>)[key], value, printed);
  else expect(actual, printed).toEqual(claimed);
}

let examples = 0;
for (const [path, source] of Object.entries(sources))
  for (const [, expression, claim] of source.matchAll(/@example (.+?) \/\/ => (.+)$/gm)) {
    examples++;
    test(`${path.split("/").at(-1)}: ${expression}`, () => {
      const scope = modules[path]!;
      const run = (code: string): unknown =>
        new Function(...Object.keys(scope), `return (${code});`)(...Object.values(scope));
      close(run(expression!), run(claim!), claim!);
    });
  }

test("there are examples to run", () => expect(examples).toBeGreaterThan(0));
