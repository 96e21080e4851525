/** What is told of a failed test at the end of a run: where, which, and why, short enough that many can be read. */

/** An error as Vitest hands it over; its own report as JSON leaves causes, differences and time limits out. */
export interface Failing {
  readonly name?: string | undefined;
  readonly message: string;
  readonly diff?: string | undefined;
  readonly cause?: unknown;
}

export interface Failure {
  readonly file: string;
  /** Of the test with those it stands in, or of what broke outside of any test. */
  readonly test: string;
  readonly errors: readonly Failing[];
}

/** Characters of each part: a long counterexample leaves room for what went wrong with it. */
const most = { message: 800, cause: 400, diff: 300 } as const;

// Colours of a terminal, in which differences come.
const colours = new RegExp(`${String.fromCharCode(27)}\\[[0-9;]*m`, "g");

const short = (text: string, characters: number): string => {
  const plain = text.replace(colours, "").trim();
  const left = plain.length - characters;
  return left > 0 ? `${plain.slice(0, characters)} … (${left} characters more)` : plain;
};

const isError = (value: unknown): value is Failing =>
  typeof value === "object" && value !== null && "message" in value && typeof value.message === "string";

/** Vitest writes before a cause that it is one. */
const named = ({ name, message }: Failing): string =>
  name ? `${name.replace(/^Caused by: /, "")}: ${message}` : message;

function why(error: Failing): readonly string[] {
  const { cause } = error;
  return [
    short(named(error), most.message),
    ...(error.diff ? [short(error.diff, most.diff)] : []),
    ...(isError(cause) ? [`because of ${short(named(cause), most.cause)}`] : []),
  ];
}

/** @returns the lines of one failure, indented beneath its name; at most some 1,500 characters for each of its errors. */
export function tellFailure({ file, test, errors }: Failure): string {
  const lines = errors.flatMap(why).flatMap((part) => part.split("\n").filter((line) => line.trim() !== ""));
  return [`FAILED ${file} > ${test}`, ...lines.map((line) => `    ${line}`)].join("\n");
}
