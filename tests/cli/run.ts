import { execFile } from "node:child_process";
import { fileURLToPath } from "node:url";

export const root = fileURLToPath(new URL("../..", import.meta.url));

export interface Ran {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the built command line in the project's folder. */
export function denominator(...args: string[]): Promise<Ran> {
  return new Promise((resolve) => {
    const child = execFile(
      process.execPath,
      [`${root}dist/cli.js`, ...args],
      { cwd: root, maxBuffer: 1 << 28 },
      (error, out, err) => resolve({ status: error ? Number(error.code) : 0, out, err }),
    );
    child.stdin?.end();
  });
}
