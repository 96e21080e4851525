/** A reporter for `tests/run.mjs`: writes what failed into the file that FAILED_TESTS names, told again at the end of all runs. */
import { writeFileSync } from "node:fs";
import { relative } from "node:path";
import type { Reporter, TestModule } from "vitest/node";
import { type Failing, type Failure, tellFailure } from "./failures";

function failuresIn(module: TestModule): readonly Failure[] {
  const file = relative(process.cwd(), module.moduleId);
  const of = (test: string, errors: readonly Failing[]): readonly Failure[] =>
    errors.length > 0 ? [{ file, test, errors }] : [];
  return [
    ...of("(the file itself)", module.errors()),
    ...[...module.children.allSuites()].flatMap((suite) => of(suite.fullName, suite.errors())),
    ...[...module.children.allTests("failed")].flatMap((test) => of(test.fullName, test.result().errors ?? [])),
  ];
}

export default class FailedTests implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly Failing[]): void {
    const outside = unhandled.map((error) => ({ file: "(outside of any test)", test: "unhandled", errors: [error] }));
    const told = [...modules.flatMap(failuresIn), ...outside].map(tellFailure);
    const { FAILED_TESTS } = process.env;
    if (FAILED_TESTS) writeFileSync(FAILED_TESTS, told.map((text) => `${text}\n`).join(""));
  }
}
