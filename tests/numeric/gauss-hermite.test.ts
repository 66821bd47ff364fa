import { expect, it } from "vitest";
import { gaussHermite } from "../../src/numeric/gauss-hermite.js";

it("integrates every even power to degree 2n - 1 to its closed form, Gamma(k + 1/2)", () => {
  for (const n of [1, 2, 3, 5, 8, 15, 16, 25, 45, 64, 101, 128]) {
    const { nodes, weights } = gaussHermite(n);
    let gamma = Math.sqrt(Math.PI);
    for (let k = 0; 2 * k <= Math.min(2 * n - 1, 60); k++) {
      const sum = weights.reduce((total, weight, at) => total + weight * nodes[at]! ** (2 * k), 0);
      expect(Math.abs(sum / gamma - 1), `${n} nodes, power ${2 * k}`).toBeLessThan(5e-13);
      gamma *= k + 0.5;
    }
  }
});

it("is symmetric, ordered and refuses other sizes", () => {
  const { nodes, weights } = gaussHermite(7);
  expect(nodes[3]).toBe(0);
  nodes.forEach((node, at) => {
    expect(node + nodes[6 - at]!).toBe(0);
    expect(weights[at]).toBe(weights[6 - at]);
    if (at > 0) expect(node).toBeLessThan(nodes[at - 1]!);
  });
  for (const n of [0, 1.5, 129, NaN])
    expect(() => gaussHermite(n)).toThrow(new RangeError(`gaussHermite: n must be an integer from 1 to 128, got ${n}`));
});
