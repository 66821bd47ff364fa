import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** The library and the command line: two entries, dependencies left to node_modules. */
export default defineConfig({
  root,
  publicDir: false,
  logLevel: "warn",
  build: {
    outDir: "dist",
    emptyOutDir: false,
    target: "node20",
    minify: false,
    ssr: true,
    rolldownOptions: {
      input: { index: `${root}src/index.ts`, cli: `${root}src/cli/main.ts` },
      output: {
        entryFileNames: "[name].js",
        chunkFileNames: "parts/[name]-[hash].js",
        banner: ({ name, isEntry }) => (isEntry && name === "cli" ? "#!/usr/bin/env node" : ""),
      },
    },
  },
});
