// What is printed may be cut off by the program that reads it.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { text } from "node:stream/consumers";
import { expect, it } from "vitest";
import { root } from "./run.js";

it("ends quietly when its reader closes the pipe", async () => {
  const child = spawn(process.execPath, [`${root}dist/cli.js`, "report", "--help"]);
  child.stdout.destroy();
  const [said, [code]] = await Promise.all([text(child.stderr), once(child, "close")]);
  expect({ said, code: code as number }).toEqual({ said: "", code: 0 });
});
