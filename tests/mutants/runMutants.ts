/**
 * Breaks the bundled protocols in every way of operators.ts and asks the checker about each. Prints what was caught,
 * operator by operator, and every survivor. `--only ID,ID` runs some operators; `--second` the second dozen, whose
 * survivors break no rule that there is, which does not make each of them harmless (src/check/README.md). Exit code 1 below 98 %, or where an
 * unbroken protocol is not proved. That each rule is broken by a mutant: killers.test.ts.
 */
import { checkProtocol } from "../../src/check/checkProtocol";
import { bundledProtocols } from "../../src/session/protocols";
import { type Judged, judge, outcomes } from "./judge";
import { operators } from "./operators";
import { secondOperators } from "./secondOperators";
import { walkWhole } from "./wholeStation";

const flag = process.argv.indexOf("--only");
const only = flag < 0 ? undefined : process.argv[flag + 1]?.split(",");

for (const p of bundledProtocols) {
  const { verdict, states } = checkProtocol(p);
  console.log(`unbroken  ${p.id}: ${verdict}, ${states} states of the slices; ${walkWhole(p).words}`);
  if (verdict !== "proved") process.exitCode = 1;
}

const countsOf = (all: readonly Judged[]) =>
  Object.fromEntries(outcomes.map((came) => [came, all.filter((j) => j.came === came).length])) as Record<
    Judged["came"],
    number
  >;

const survivors: string[] = [];
const everything: Judged[] = [];
const isSecond = process.argv.includes("--second");
const chosen = (isSecond ? secondOperators : operators).filter((o) => only === undefined || only.includes(o.id));
for (const { id, words, mutants } of chosen) {
  const judged = bundledProtocols.flatMap((p) =>
    mutants(p).map((mutant) => {
      const found = judge(mutant);
      if (found.came !== "caught") survivors.push(`${found.came}  ${id}: ${p.id}: ${mutant.what}: ${found.words}`);
      return found;
    }),
  );
  everything.push(...judged);
  const { caught, ...others } = countsOf(judged);
  const rest = Object.entries(others).flatMap(([came, n]) => (n > 0 ? [`, ${n} ${came}`] : []));
  const of = `${String(caught).padStart(4)} of ${String(judged.length).padStart(3)} caught${rest.join("")}`;
  console.log(`${id.padEnd(28)} ${of}   ${words}`);
}

for (const line of survivors) console.log(line);
const { caught, notProved, equivalent, missed } = countsOf(everything);
const counted = everything.length - equivalent;
const rate = counted === 0 ? 100 : (100 * caught) / counted;
console.log(
  `${everything.length} mutants, ${chosen.length} operators: ${caught} caught, ${notProved} not proved, ` +
    `${equivalent} equivalent, ${missed} missed: ${rate.toFixed(2)} % of those that are not equivalent`,
);
if (rate < 98 && !isSecond) process.exitCode = 1;
