/** Checks the three bundled protocols and prints counts and times; exit code 1 unless all are proved. */
import { bundledProtocols } from "../session/protocols";
import { verdictLines } from "./checkCommand";
import { checkProtocol } from "./checkProtocol";

for (const protocol of bundledProtocols) {
  const found = checkProtocol(protocol);
  for (const line of verdictLines(found)) console.log(`${protocol.id}: ${line}`);
  if (found.verdict !== "proved") process.exitCode = 1;
}
