import { defineConfig } from "vitest/config";

export default defineConfig({
  define: { __LUNGWARD_VERSION__: JSON.stringify("test"), __SINGLE_FILE__: "false" },
  test: {
    include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
    environment: "node",
    testTimeout: 60_000,
    hookTimeout: 60_000,
    maxWorkers: 2,
  },
});
