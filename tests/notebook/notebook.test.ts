import { afterEach, describe, expect, it } from "vitest";
import { cellsOf } from "../../src/notebook/cells.js";
import { startNotebook, type Notebook } from "../../src/notebook/notebook.js";

interface Sum {
  a: number;
  b: number;
  sum: number;
  half: number;
}
const cell = cellsOf<Sum>();
const cells = [
  cell("a", [], () => 2),
  cell("b", [], () => 4),
  cell("sum", ["a", "b"], (a, b) => {
    if (a < 0) throw new RangeError(`sum: a must not be negative, got ${a}`);
    return a + b;
  }),
  cell("half", ["sum"], async (sum) => sum / 2),
];
let notebook: Notebook<Sum>;
afterEach(() => notebook.dispose());

describe("a notebook", () => {
  it("follows a cell that is set, in cells that take their time too", async () => {
    notebook = startNotebook(cells);
    expect(await notebook.value("half")).toBe(3);
    notebook.set("a", 6);
    expect(await notebook.value("half")).toBe(5);
  });

  it("says what is wrong where it is seen, and recovers", async () => {
    notebook = startNotebook(cells);
    const seen: unknown[] = [];
    const stop = notebook.observe("half", {
      fulfilled: (value) => seen.push(value),
      rejected: (text) => seen.push(text),
    });
    await expect.poll(() => seen).toEqual([3]);
    notebook.set("a", -1);
    await expect.poll(() => seen.at(-1)).toBe("sum: a must not be negative, got -1");
    notebook.set("a", 0);
    await expect.poll(() => seen.at(-1)).toBe(2);
    stop();
    notebook.set("a", 8);
    expect(await notebook.value("half")).toBe(6);
    expect(seen.at(-1)).toBe(2);
  });

  it("refuses to set a computed cell, a name used twice and an input that is not there", () => {
    notebook = startNotebook(cells);
    expect(() => notebook.set("sum", 1)).toThrow(RangeError);
    expect(() => startNotebook([...cells, cell("a", [], () => 1)])).toThrow("notebook: two cells have the same name");
    expect(() => startNotebook(cells.slice(1))).toThrow('notebook: cell "sum" stands on "a", which is not there');
  });

  it("checks names and types before it runs", () => {
    notebook = startNotebook(cells);
    // @ts-expect-error no such input
    cell("sum", ["aa"], () => 1);
    // @ts-expect-error a sum is a number
    cell("sum", ["a"], () => "1");
    // @ts-expect-error a is a number
    void (() => notebook.set("a", "1"));
  });
});
