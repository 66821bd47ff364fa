import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    globalSetup: ["tests/r.setup.ts", "tests/build.setup.ts"],
    setupFiles: ["tests/properties.setup.ts"],
    testTimeout: 90_000,
    hookTimeout: 120_000,
  },
});
