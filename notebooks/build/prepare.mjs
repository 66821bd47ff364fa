// Runs after `npm ci`: builds the library and the command line, and lays `denominator` where npx looks first.
import { execFileSync } from "node:child_process";
import { chmodSync, mkdirSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../..", import.meta.url));
const env = { ...process.env, NODE_ENV: "production" };
const run = (script, ...args) =>
  execFileSync(process.execPath, [join(root, "node_modules", script), ...args], { cwd: root, stdio: "inherit", env });

rmSync(join(root, "dist"), { recursive: true, force: true });
run("vite/bin/vite.js", "build", "--config", "notebooks/build/library.config.ts");
run("typescript/bin/tsc", "-p", "notebooks/build/types.json");

const command = join(root, "dist", "cli.js");
chmodSync(command, 0o755);
const link = join(root, "node_modules", ".bin", "denominator");
mkdirSync(dirname(link), { recursive: true });
if (process.platform === "win32") writeFileSync(`${link}.cmd`, `@node "%~dp0\\..\\..\\dist\\cli.js" %*\r\n`);
else {
  rmSync(link, { force: true });
  symlinkSync("../../dist/cli.js", link);
}
