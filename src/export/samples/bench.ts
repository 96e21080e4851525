/**
 * `npm run bench:record`: how long an append takes in a file, and how many facts a verifier takes in a second, beside the
 * plain alternative: the whole record stringified and hashed at once, which proves nothing of its parts.
 */
import { createHash } from "node:crypto";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { inputFor } from "../../../tests/support/session";
import { smallProtocol } from "../../../tests/support/smallProtocol";
import { newSigner, walkChain } from "../../log";
import { fileJournal } from "../../log/fileJournal";
import { readRecord } from "../readRecord";
import { currentRules, replay } from "../replay/replay";
import { sealRecord } from "../sealRecord";
import { verifyRecord } from "../verifyRecord";
import { headerFor, live, stampOf } from "./lived";
import { wholeSession } from "./wholeSession";

const input = inputFor(smallProtocol);
const signer = await newSigner();
const ms = (values: number[], q: number) => values.sort((a, b) => a - b)[Math.floor(values.length * q)]?.toFixed(2);

async function appends(): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), "gloveside-bench-"));
  const opened = await fileJournal(folder, signer).open(headerFor(input, signer.publicKey));
  if (!opened.ok) throw new Error(opened.message);
  const taken: number[] = [];
  for (let cause = 0; cause < 500; cause++) {
    const start = performance.now();
    const fact = { type: "v1.TimeWitnessed", witnessedMs: 10_000, cause } as const;
    const kept = await opened.writer.append([fact], stampOf({ by: "clock" }, cause * 10_000));
    if (!kept.ok) throw new Error(kept.message);
    taken.push(performance.now() - start);
  }
  await opened.writer.release();
  await rm(folder, { recursive: true });
  console.log(`append, file, synced: median ${ms(taken, 0.5)} ms, p99 ${ms(taken, 0.99)} ms over ${taken.length}`);
}

async function verifies(): Promise<void> {
  const work = wholeSession.slice(0, -2);
  const longer = [
    ...work.slice(0, 14),
    ...Array.from({ length: 3000 }, () => rest).flat(),
    ...work.slice(14),
    ...wholeSession.slice(-2),
  ];
  const { journal, writer } = await live(input, longer, signer);
  const sealed = await sealRecord(journal, writer, signer, "2026-11-25T23:00:00.000+00:00");
  if (!sealed.ok) throw new Error(sealed.message);
  const bytes = new TextEncoder().encode(sealed.text);
  const facts = sealed.record.entries.length;
  const rate = async (what: string, act: () => unknown) => {
    await act();
    const [wall, cpu] = [performance.now(), process.cpuUsage()];
    for (let i = 0; i < 5; i++) await act();
    const used = process.cpuUsage(cpu);
    const perSecond = (micros: number) => Math.round((facts * 5e6) / micros);
    const byCpu = perSecond(used.user + used.system);
    console.log(
      `${what}: ${byCpu} facts/s of processor time, ${perSecond((performance.now() - wall) * 1000)} of wall time`,
    );
  };
  console.log(`${facts} facts, ${bytes.length} bytes`);
  const verdict = await verifyRecord(bytes);
  if (!verdict.intact.ok || !verdict.signedBy.ok || !verdict.follows.ok) throw new Error(JSON.stringify(verdict));
  await rate("verify, all three verdicts", () => verifyRecord(bytes));
  await rate("  read and shape", () => readRecord(bytes));
  await rate("  chain", () => walkChain(sealed.record.header, sealed.record.entries));
  await rate("  replay and summary", () => replay(currentRules, input, sealed.record.entries));
  await rate("plain: parse, stringify, hash the whole", () =>
    createHash("sha256")
      .update(JSON.stringify(JSON.parse(sealed.text)))
      .digest("hex"),
  );
}

const rest = [
  { type: "event.reported", event: "freshGloves" },
  { type: "step.done" },
  { type: "step.done" },
  { type: "step.done" },
] as const;

await appends();
await verifies();
