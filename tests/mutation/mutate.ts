/** Takes each line away in a copy of the tree and sees the property fail. Exit code 1 if one stays green. */
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type Mutation, mutations } from "./takenAway";

const root = process.cwd();
const copy = join(root, "out", "mutation");

rmSync(copy, { recursive: true, force: true });
mkdirSync(copy, { recursive: true });
for (const part of ["src", "machines", "tests", "package.json", "tsconfig.json", "vitest.config.ts"]) {
  cpSync(join(root, part), join(copy, part), { recursive: true });
}
symlinkSync(join(root, "node_modules"), join(copy, "node_modules"));

const runs = (test: Mutation["test"]): boolean =>
  spawnSync("npx", ["vitest", "run", "--project", "unit", `tests/properties/${test}.test.ts`], {
    cwd: copy,
    stdio: "ignore",
  }).status === 0;

function isCaught({ file, line, instead, test }: Mutation): boolean {
  const path = join(copy, file);
  const whole = readFileSync(path, "utf8");
  if (!whole.includes(line)) throw new Error(`${file} has no line "${line}": correct tests/mutation/takenAway.ts`);
  writeFileSync(path, whole.replace(line, instead));
  const green = runs(test);
  writeFileSync(path, whole);
  return !green;
}

/** `npm run mutate -- sharps` takes only the lines whose invariant or file has that word in it. */
const word = process.argv[2] ?? "";
const chosen = mutations.filter((m) => `${m.invariant} ${m.file}`.includes(word));
let missed = 0;
for (const mutation of chosen) {
  const caught = isCaught(mutation);
  if (!caught) missed += 1;
  console.log(
    `${caught ? "caught" : "MISSED"}  ${mutation.invariant}: ${mutation.file}: ${mutation.line.split("\n")[0]}`,
  );
}
console.log(`${chosen.length} lines taken away, ${chosen.length - missed} caught, ${missed} missed`);
process.exitCode = missed === 0 ? 0 : 1;
