import { describe, expect, test } from "vitest";
import { verifyRecord } from "../export";
import { memoryJournal, newSigner, type ReadSession } from "../log";
import { began, done, smallInput, smallOpening, stampAt } from "../log/samples/smallSession";
import { saveSoFar } from "./saveSoFar";

/** A session of three facts, and what is put into a file. */
async function running() {
  const signer = await newSigner();
  const journal = memoryJournal(signer);
  const opened = await journal.open(smallOpening(signer.publicKey));
  if (!opened.ok) throw new Error(opened.message);
  const { writer } = opened;
  await writer.append([began], stampAt(0));
  await writer.append([done("washHands", 1), done("coverLamp", 1)], stampAt(900));
  const put: string[] = [];
  const parts = {
    read: (): Promise<ReadSession> => journal.read(writer.session),
    sealed: null,
    signed: () => writer.signed,
    put: (text: string) => void put.push(text),
  };
  return { journal, writer, parts, put };
}
const factsIn = (text: string | undefined) =>
  JSON.parse(text ?? "{}").entries?.map((entry: { fact: unknown }) => entry.fact);

const shut: ReadSession = { ok: false, code: "storage-lost", message: "Internal error opening backing store." };

describe("saving what is kept so far", () => {
  test("hands over all of it, the personal part too, where the store can be read", async () => {
    const { parts, put } = await running();
    expect(await saveSoFar(parts)).toBe("whole");
    expect(factsIn(put[0])).toHaveLength(3);
    expect(put[0]).toContain(smallInput.clientReference);
  });

  test.each<[string, () => Promise<ReadSession>]>([
    ["answers that it does not open", async () => shut],
    ["throws", () => Promise.reject(new Error("Internal error opening backing store."))],
    ["knows nothing of the session any more", async () => ({ ...shut, code: "session-unknown" })],
  ])("hands over every signed fact, and nothing personal, where the store %s", async (_how, read) => {
    const { parts, put } = await running();
    expect(await saveSoFar({ ...parts, read })).toBe("signedOnly");
    expect(factsIn(put[0])).toEqual([began, done("washHands", 1), done("coverLamp", 1)]);
    expect(put[0]).not.toContain(smallInput.clientReference);
    expect(JSON.parse(put[0] ?? "")).not.toHaveProperty("personal");
    expect(await verifyRecord(put[0] ?? "", { acceptUnfinished: true })).toMatchObject({ intact: { ok: true } });
  });

  test("holds no fact that was not acknowledged", async () => {
    const { journal, writer, parts, put } = await running();
    journal.failNext("storage-full");
    expect((await writer.append([done("coverLamp", 2)], stampAt(1_000))).ok).toBe(false);
    expect(await saveSoFar({ ...parts, read: async () => shut })).toBe("signedOnly");
    expect(factsIn(put[0])).toHaveLength(3);
  });

  test("holds what was kept before a session was taken up again, and what came after", async () => {
    const { journal, writer, parts, put } = await running();
    await writer.release();
    const taken = await journal.resume(writer.session);
    if (!taken.ok) throw new Error(taken.message);
    await taken.writer.append([done("coverLamp", 2)], stampAt(1_000));
    await saveSoFar({ ...parts, read: async () => shut, signed: () => taken.writer.signed });
    expect(factsIn(put[0])).toHaveLength(4);
    expect(await verifyRecord(put[0] ?? "", { acceptUnfinished: true })).toMatchObject({ intact: { ok: true } });
  });

  test("hands over the sealed record where there is one and the store does not open", async () => {
    const { parts, put } = await running();
    expect(await saveSoFar({ ...parts, read: async () => shut, sealed: "sealed" })).toBe("whole");
    expect(put).toEqual(["sealed"]);
  });

  test("says that there is no file where none can be made", async () => {
    const { parts } = await running();
    const put = () => {
      throw new DOMException("no room", "QuotaExceededError");
    };
    expect(await saveSoFar({ ...parts, put })).toBe("none");
    expect(await saveSoFar({ ...parts, read: async () => shut, put })).toBe("none");
  });
});
