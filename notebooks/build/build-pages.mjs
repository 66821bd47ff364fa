// Builds every notebook twice: pages for the local server (dist/pages) and one self-contained file each (dist/single).
import { rmSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { build } from "vite";
import { notebookFolders, notebooksRoot } from "./folders.mjs";
import { singleFile } from "./single-file.mjs";

process.env.NODE_ENV = "production";
const single = fileURLToPath(new URL("../../dist/single", import.meta.url));

await build({ configFile: `${notebooksRoot}build/pages.config.ts`, mode: "production" });
rmSync(single, { recursive: true, force: true });
for (const name of process.argv.includes("--served-only") ? [] : notebookFolders())
  await build({
    configFile: false,
    mode: "production",
    root: notebooksRoot,
    base: "./",
    publicDir: false,
    logLevel: "warn",
    define: { "import.meta.env.SINGLE": "true" },
    plugins: [singleFile(name)],
    build: {
      outDir: single,
      emptyOutDir: false,
      target: "es2023",
      cssCodeSplit: false,
      modulePreload: false,
      assetsInlineLimit: 100_000_000,
      chunkSizeWarningLimit: 4000,
      rolldownOptions: { input: `${notebooksRoot}${name}/index.html`, output: { codeSplitting: false } },
    },
  });
