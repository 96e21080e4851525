import { defineConfig } from "vitest/config";

/** Unit and property tests run in Node; journeys run in a real Chromium and live in tests/journeys. */
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: "unit",
          include: ["src/**/*.test.ts", "machines/**/*.test.ts", "tests/**/*.test.ts", "audio/**/*.test.ts"],
          exclude: ["tests/journeys/**"],
          environment: "node",
          testTimeout: 180_000,
        },
      },
      {
        test: {
          name: "journeys",
          include: ["tests/journeys/**/*.test.ts"],
          environment: "node",
          fileParallelism: false,
          testTimeout: 600_000,
          hookTimeout: 300_000,
        },
      },
    ],
  },
});
