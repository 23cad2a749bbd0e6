import { defineConfig } from "vitest/config";
import { lessons } from "./scripts/lesson-data.ts";
import { openingPoint } from "./scripts/opening-point.ts";

export default defineConfig({
  plugins: [lessons()],
  define: {
    __LUNGWARD_VERSION__: JSON.stringify("test"),
    __SINGLE_FILE__: "false",
    __OPENING__: JSON.stringify(openingPoint()),
  },
  test: {
    include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
    environment: "node",
    setupFiles: "tests/clear-page.ts",
    testTimeout: 60_000,
    hookTimeout: 60_000,
    maxWorkers: 2,
    // No module keeps anything from one file to the next, and loading them once takes a sixth less time.
    isolate: false,
  },
});
