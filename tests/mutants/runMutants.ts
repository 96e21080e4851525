/**
 * Breaks the bundled protocols in every way of operators.ts and asks the checker about each. Prints what was caught,
 * operator by operator, and every survivor. `--only ID,ID` runs some operators, `--killers` prints a mutant for each rule. Exit code 1 below 98 %, or where a rule of the
 * catalogue was broken by no mutant.
 */
import { checkProtocol } from "../../src/check/checkProtocol";
import { type RuleId, ruleIds, rules } from "../../src/check/rules";
import { bundledProtocols } from "../../src/session/protocols";
import { asProtocol } from "../../src/session/readProtocol";
import { isHarmless } from "./bruteForce";
import { laterOperators } from "./laterOperators";
import { operators } from "./operators";

const only = process.argv.includes("--only") ? process.argv[process.argv.indexOf("--only") + 1]?.split(",") : undefined;
/** By rule, the first mutant that breaks it. */
const killed = new Map<RuleId, string>();
const noted = (rule: RuleId, operator: string, protocol: string, what: string): RuleId => {
  if (!killed.has(rule)) killed.set(rule, `${operator}: ${protocol}: ${what}`);
  return rule;
};
const survivors: string[] = [];
let [all, caught, open, equivalent] = [0, 0, 0, 0];

for (const p of bundledProtocols) {
  const whole = checkProtocol(p);
  console.log(`unbroken  ${p.id}: ${whole.verdict}, ${whole.states} states`);
  if (whole.verdict !== "proved") process.exitCode = 1;
}

const chosen = operators.filter((o) => only === undefined || only.includes(o.id));
for (const operator of chosen) {
  const count = { mutants: 0, caught: 0, notProved: 0, equivalent: 0, missed: 0 };
  for (const protocol of bundledProtocols) {
    for (const mutant of operator.mutants(protocol)) {
      const read = asProtocol(JSON.parse(JSON.stringify(mutant.protocol)));
      if (!read.ok) throw new Error(`${operator.id} made no protocol: ${read.trouble.message}`);
      count.mutants += 1;
      const found = checkProtocol(read.protocol);
      if (found.verdict === "breach") {
        count.caught += 1;
        for (const b of found.breaches) noted(b.rule, operator.id, protocol.id, mutant.what);
        continue;
      }
      if (found.verdict === "notProved") {
        count.notProved += 1;
        survivors.push(`not proved  ${operator.id}: ${protocol.id}: ${mutant.what}: ${found.why}`);
        continue;
      }
      const harmless = isHarmless(read.protocol);
      if (harmless.ok) count.equivalent += 1;
      else count.missed += 1;
      survivors.push(
        `${harmless.ok ? "equivalent" : "MISSED    "}  ${operator.id}: ${protocol.id}: ${mutant.what}: ${harmless.words}`,
      );
    }
  }
  all += count.mutants;
  caught += count.caught;
  open += count.notProved;
  equivalent += count.equivalent;
  const { mutants, missed } = count;
  console.log(
    `${operator.id.padEnd(28)} ${String(count.caught).padStart(4)} of ${String(mutants).padStart(3)} caught` +
      `${count.notProved > 0 ? `, ${count.notProved} not proved` : ""}${count.equivalent > 0 ? `, ${count.equivalent} equivalent` : ""}${missed > 0 ? `, ${missed} MISSED` : ""}   ${operator.words}`,
  );
}

for (const line of survivors) console.log(line);
const judged = all - equivalent;
const rate = judged === 0 ? 100 : (100 * caught) / judged;
console.log(
  `${all} mutants, ${chosen.length} operators: ${caught} caught, ${open} not proved, ${equivalent} equivalent, ` +
    `${judged - caught - open} missed: ${rate.toFixed(2)} % of those that are not equivalent`,
);
for (const operator of only === undefined ? laterOperators : []) {
  const breaches = bundledProtocols
    .flatMap((p) => operator.mutants(p).map((mutant) => ({ p, mutant })))
    .flatMap(({ p, mutant }) => {
      const found = checkProtocol(mutant.protocol);
      if (found.verdict !== "breach") survivors.push(`${operator.id}: ${p.id}: ${mutant.what}: ${found.verdict}`);
      return found.verdict === "breach" ? found.breaches.map((b) => noted(b.rule, operator.id, p.id, mutant.what)) : [];
    });
  console.log(`beside the rate: ${operator.id}: ${breaches.length} breaches   ${operator.words}`);
}
const unkilled = ruleIds.filter((id) => !killed.has(id));
if (only === undefined) {
  console.log(`${ruleIds.length - unkilled.length} of ${ruleIds.length} rules broken by a mutant`);
  for (const id of unkilled) console.log(`NO MUTANT  ${id}: ${rules[id].words}`);
  if (unkilled.length > 0) process.exitCode = 1;
}
if (process.argv.includes("--killers")) {
  console.log(JSON.stringify(Object.fromEntries(killed), null, 1));
}
if (rate < 98) process.exitCode = 1;
