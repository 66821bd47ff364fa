// The command-line tests run what users run: the built program.
import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));

export default function setup(): void {
  execFileSync(
    process.execPath,
    ["node_modules/vite/bin/vite.js", "build", "--config", "notebooks/build/library.config.ts"],
    {
      cwd: root,
      env: { ...process.env, NODE_ENV: "production" },
      stdio: ["ignore", "ignore", "inherit"],
    },
  );
}
