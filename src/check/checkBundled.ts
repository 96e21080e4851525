/**
 * Checks the three bundled protocols and prints counts and times; exit code 1 unless all are proved. Seconds of the
 * processor stand beside those of the clock, which a busy machine makes longer.
 */
import { bundledProtocols } from "../session/protocols";
import { verdictLines } from "./checkCommand";
import { checkProtocol } from "./checkProtocol";
import { checkWordsFor } from "./words";

for (const protocol of bundledProtocols) {
  const before = process.cpuUsage();
  const found = checkProtocol(protocol);
  const { user, system } = process.cpuUsage(before);
  for (const line of verdictLines(checkWordsFor("en"), protocol, found)) console.log(`${protocol.id}: ${line}`);
  console.log(`${protocol.id}: ${((user + system) / 1e6).toFixed(2)} s of the processor`);
  if (found.verdict !== "proved") process.exitCode = 1;
}
