/**
 * The whole test: installs what the tests need from Debian, checks form and types, then runs every test and closes with
 * one line of figures. `npm test -- unit` or `npm test -- journeys` runs one project.
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";

const root = new URL("..", import.meta.url).pathname;
const report = join(root, "out", "tests.json");

/** Programs that the tests run, and the Debian packages that bring them. */
const needed = [
  ["/usr/bin/chromium", "chromium"],
  ["/usr/bin/firefox-esr", "firefox-esr"],
  ["/usr/bin/flite", "flite"],
  ["/usr/bin/espeak-ng", "espeak-ng"],
  ["/usr/bin/ffmpeg", "ffmpeg"],
];

const run = (command, args, options = {}) => {
  const { status, error } = spawnSync(command, args, { cwd: root, stdio: "inherit", ...options });
  if (error) console.error(`${command}: ${error.message}`);
  return status ?? 1;
};

function installMissing() {
  const missing = needed.filter(([program]) => !existsSync(program)).map(([, debian]) => debian);
  if (missing.length === 0) return 0;
  console.log(`Installing from Debian: ${missing.join(", ")}`);
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  run("apt-get", ["update", "-qq"], { env });
  const status = run("apt-get", ["install", "-y", "-qq", "--no-install-recommends", ...missing], { env });
  if (status !== 0)
    console.error(`Could not install ${missing.join(", ")}. As root: apt-get install ${missing.join(" ")}`);
  return status;
}

function figures() {
  if (!existsSync(report)) return { passed: 0, failed: 1 };
  const { numPassedTests, numFailedTests, numFailedTestSuites, success } = JSON.parse(readFileSync(report, "utf8"));
  const failed = numFailedTests > 0 ? numFailedTests : success ? 0 : Math.max(1, numFailedTestSuites);
  return { passed: numPassedTests, failed };
}

const projects = process.argv.slice(2).flatMap((name) => ["--project", name]);
mkdirSync(join(root, "out"), { recursive: true });
rmSync(report, { force: true });

const installed = installMissing();
const checked = run("npm", ["run", "--silent", "check"]);
const tested = run("npx", [
  "vitest",
  "run",
  ...projects,
  "--reporter=default",
  "--reporter=json",
  `--outputFile.json=${report}`,
]);
const { passed, failed } = figures();
const others = [installed, checked].filter((status) => status !== 0).length;
if (checked !== 0) console.error("The check of form and types failed; see above.");
console.log(`${passed} passed, ${failed + others} failed`);
process.exitCode = installed === 0 && checked === 0 && tested === 0 && failed === 0 ? 0 : 1;
