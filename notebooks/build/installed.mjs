import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

/** Folder of the project. */
export const projectRoot = fileURLToPath(new URL("../../", import.meta.url));

/** A line on standard output. */
export const say = (text) => void process.stdout.write(`${text}\n`);
/** A line on standard error. */
export const complain = (text) => void process.stderr.write(`${text}\n`);

/** Runs a program of the project in its folder, its output shown; returns the exit status. */
export function run(command, args, options = {}) {
  const { status, error } = spawnSync(command, args, { cwd: projectRoot, stdio: "inherit", ...options });
  if (error) complain(`${command}: ${error.message}`);
  return status ?? 1;
}

/** Installs the packages when they are missing; ends the process with a message when that fails. */
export function installWhenMissing() {
  const [major, minor] = process.versions.node.split(".").map(Number);
  if (major < 20 || (major === 20 && minor < 10)) {
    complain(`Denominator needs Node 20.10 or newer; this is ${process.versions.node}.`);
    process.exit(1);
  }
  if (existsSync(join(projectRoot, "node_modules/vite/package.json"))) return;
  say("Installing what is missing (npm ci); this happens once.");
  // npm is a script on Windows, which needs a shell to start it.
  const status = run("npm", ["ci", "--no-audit", "--no-fund"], { shell: process.platform === "win32" });
  if (status !== 0) {
    complain("npm ci did not succeed; see its message above. It needs the package registry once.");
    process.exit(status);
  }
}
