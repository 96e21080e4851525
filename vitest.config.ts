import { defineConfig } from "vitest/config";

/** A whole session by voice, in real time. */
const wholeSession = "tests/journeys/wholeSession.test.ts";

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
          // No bar, only an end to what hangs: some properties take a minute on two free cores, and they may be busy.
          testTimeout: 600_000,
          hookTimeout: 300_000,
          setupFiles: ["tests/support/seed.ts"],
        },
      },
      {
        test: {
          name: "journeys",
          include: ["tests/journeys/**/*.test.ts"],
          exclude: [wholeSession],
          environment: "node",
          fileParallelism: false,
          testTimeout: 600_000,
          hookTimeout: 300_000,
        },
      },
      {
        test: {
          name: "session",
          include: [wholeSession],
          environment: "node",
          testTimeout: 600_000,
          hookTimeout: 300_000,
        },
      },
    ],
  },
});
