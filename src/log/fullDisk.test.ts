/**
 * The log in files on a disk that is truly full: a file system of 256 kB, filled to the last byte. Skipped, with the reason
 * in its name, where mounting is not permitted: it takes root and no sandbox around it.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { fileJournal } from "./fileJournal";
import { began, done, smallOpening, stampAt } from "./samples/smallSession";
import { newSigner } from "./signing";

const disk = mkdtempSync(join(tmpdir(), "gloveside-full-"));

function mountSmall(): string | null {
  try {
    execFileSync("mount", ["-t", "tmpfs", "-o", "size=256k", "tmpfs", disk], { stdio: "pipe" });
    return null;
  } catch (error) {
    return (error as Error).message.trim().split("\n").at(-1) ?? "no reason given";
  }
}
const whyNot = mountSmall();
afterAll(() => {
  if (whyNot === null) execFileSync("umount", ["-l", disk]);
  rmSync(disk, { recursive: true, force: true });
});

describe.skipIf(whyNot !== null)(`a disk that is full${whyNot === null ? "" : ` (skipped: ${whyNot})`}`, () => {
  test("keeps no part of what does not fit, says so each time, and goes on once there is room", async () => {
    const signer = await newSigner();
    const journal = fileJournal(join(disk, "log"), signer);
    const opened = await journal.open(smallOpening(signer.publicKey));
    if (!opened.ok) throw new Error(opened.message);
    const { writer } = opened;
    expect((await writer.append([began], stampAt(0))).ok).toBe(true);
    expect(() => writeFileSync(join(disk, "filler"), Buffer.alloc(400_000, 7))).toThrow("ENOSPC");

    const answers: string[] = [];
    for (let cause = 1; answers.filter((code) => code === "storage-full").length < 3; cause++) {
      const answer = await writer.append([done("washHands", cause)], stampAt(cause));
      answers.push(answer.ok ? "kept" : answer.code);
    }
    const acknowledged = answers.filter((code) => code === "kept").length + 1;
    expect(writer.count).toBe(acknowledged);
    const read = await journal.read(writer.session);
    expect(read.ok && read.kept.entries.length).toBe(acknowledged);

    rmSync(join(disk, "filler"));
    expect((await writer.append([done("coverLamp", acknowledged)], stampAt(9_000))).ok).toBe(true);
    const after = await journal.read(writer.session);
    expect(after.ok && after.kept.entries.length).toBe(acknowledged + 1);
    expect(after.ok && after.kept.entries.slice(0, -1)).toEqual(read.ok && read.kept.entries);
    await writer.release();
  });
});
