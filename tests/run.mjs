/**
 * The whole test: installs what the tests need from Debian, checks form and types, then runs every test and closes with
 * one line of figures. `npm test -- unit` runs one project: unit, journeys or session.
 */
import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";

const root = new URL("..", import.meta.url).pathname;

/** Programs that the tests run, and the Debian packages that bring them. */
const needed = [
  ["/usr/bin/chromium", "chromium"],
  ["/usr/bin/firefox-esr", "firefox-esr"],
  ["/usr/bin/flite", "flite"],
  ["/usr/bin/espeak-ng", "espeak-ng"],
  ["/usr/bin/ffmpeg", "ffmpeg"],
  ["/usr/bin/pulseaudio", "pulseaudio"],
  ["/usr/bin/pactl", "pulseaudio-utils"],
];

/** Tried where they are, and left out, saying so, where they are not: they would make every run longer. */
const forWebkit = [
  ["/usr/bin/WebKitWebDriver", "webkit2gtk-driver"],
  ["/usr/bin/Xvfb", "xvfb"],
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

function figuresOf(report) {
  if (!existsSync(report)) return { passed: 0, failed: 1 };
  const { numPassedTests, numFailedTests, numFailedTestSuites, success } = JSON.parse(readFileSync(report, "utf8"));
  const failed = numFailedTests > 0 ? numFailedTests : success ? 0 : Math.max(1, numFailedTestSuites);
  return { passed: numPassedTests, failed };
}

/** Runs a project of the tests, or a share of it. @returns what passed and failed; a run that broke off counts as one failure. */
function vitest(project, share = "1/1") {
  const report = join(root, "out", `tests.${project}.${share.replace("/", ".of.")}.json`);
  const failures = report.replace(".json", ".failed.txt");
  for (const file of [report, failures]) rmSync(file, { force: true });
  const args = ["vitest", "run", "--project", project, "--shard", share];
  args.push("--reporter=default", "--reporter=json", `--outputFile.json=${report}`);
  args.push("--reporter=./tests/support/failedTests.ts");
  return new Promise((done) => {
    const env = { ...process.env, FAILED_TESTS: failures };
    const run = spawn("npx", args, { cwd: root, stdio: "inherit", env });
    run.on("error", (error) => console.error(`npx: ${error.message}`));
    run.on("close", (status) => {
      const { passed, failed } = figuresOf(report);
      const told = existsSync(failures) ? readFileSync(failures, "utf8") : "";
      const why =
        status === 0 || told !== "" ? told : `FAILED ${project} ${share} > broke off, or failed outside of any test\n`;
      done({ passed, failed: status === 0 ? failed : Math.max(1, failed), why });
    });
  });
}

const asked = process.argv.slice(2);
mkdirSync(join(root, "out"), { recursive: true });

const installed = installMissing();
const checking = spawnSync("npm", ["run", "--silent", "check"], { cwd: root, encoding: "utf8" });
const checked = checking.status ?? 1;
const saidOfCheck = `${checking.stdout ?? ""}${checking.stderr ?? ""}`;
console.log(saidOfCheck);
// Built once, before two runs would do it at the same time.
if (asked.length === 0) run(process.execPath, ["bin/serve.mjs", "--build-only"]);
/** The whole session takes a quarter of an hour of real sound and little else: the other journeys go on beside it, two at once. */
const beside = [["session"], ["journeys", "1/2"], ["journeys", "2/2"]];
const runs = [];
if (asked.length === 0) {
  runs.push(await vitest("unit"));
  runs.push(...(await Promise.all(beside.map(([project, share]) => vitest(project, share)))));
} else for (const project of asked) runs.push(await vitest(project));
const sum = (of) => runs.reduce((total, one) => total + of(one), 0);
const others = [installed, checked].filter((status) => status !== 0).length;
if (checked !== 0) console.log(`FAILED npm run check\n${saidOfCheck.slice(-1_500)}`);
const missing = forWebkit.filter(([program]) => !existsSync(program)).map(([, debian]) => debian);
if (missing.length > 0) console.log(`Left out: WebKit. To try it as well: apt-get install ${missing.join(" ")}`);
const failed = sum((one) => one.failed) + others;
// Once more, together: above, they stand amid the output of runs side by side.
process.stdout.write(runs.map((one) => one.why).join(""));
console.log(`${sum((one) => one.passed)} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
