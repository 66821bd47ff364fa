import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";

const demo = fileURLToPath(new URL("../../data-demo/", import.meta.url));

it("the invented cohort is what its script writes", () => {
  const folder = mkdtempSync(join(tmpdir(), "cohort-"));
  try {
    execFileSync(process.execPath, [join(demo, "make-cohort.mjs"), folder]);
    for (const file of ["cohort.csv", "cohort-as-kept.csv"])
      expect(readFileSync(join(folder, file), "utf8"), file).toBe(readFileSync(join(demo, file), "utf8"));
  } finally {
    rmSync(folder, { recursive: true });
  }
});
