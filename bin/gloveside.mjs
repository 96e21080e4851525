#!/usr/bin/env node
// Runs src/cli straight from its TypeScript, so that a fresh clone works after `npm ci` without a build.
import { register } from "tsx/esm/api";

const unregister = register();
const { main } = await import("../src/cli/main.ts");

// Whoever reads may stop reading: `gloveside hear long.wav | head`.
process.stdout.on("error", () => process.exit(0));
process.exitCode = await main(process.argv.slice(2), {
  print: (line) => void process.stdout.write(`${line}\n`),
  error: (line) => void process.stderr.write(`${line}\n`),
});
await unregister();
