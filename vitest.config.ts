import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    globalSetup: ["tests/r.setup.ts", "tests/build.setup.ts"],
    setupFiles: ["tests/properties.setup.ts"],
    testTimeout: 90_000,
    // A page on a busy machine answers late; a test that waits for it waits long enough.
    expect: { poll: { timeout: 15_000 } },
    hookTimeout: 120_000,
  },
});
