import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";
import { notebookFolders, notebooksRoot } from "./folders.mjs";
import { securityHeaders } from "./policy.mjs";

/** All notebooks as pages that share their code, for the local server. */
export default defineConfig({
  root: notebooksRoot,
  base: "./",
  publicDir: false,
  logLevel: "warn",
  preview: { headers: securityHeaders },
  build: {
    outDir: fileURLToPath(new URL("../../dist/pages", import.meta.url)),
    emptyOutDir: true,
    target: "es2023",
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 2000,
    rolldownOptions: {
      input: Object.fromEntries(notebookFolders().map((name) => [name, `${notebooksRoot}${name}/index.html`])),
    },
  },
});
