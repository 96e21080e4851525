import { expect, test } from "vitest";
import { memoryJournal, newSigner } from "./index";
import { began, done, sampleSession, smallOpening, stampAt } from "./samples/smallSession";

test("keeps the facts of an event as numbered, linked entries", async () => {
  const signer = await newSigner();
  const journal = memoryJournal(signer);
  const opened = await journal.open(smallOpening(signer.publicKey));
  if (!opened.ok) throw new Error(opened.message);
  const first = await opened.writer.append([began], stampAt(0));
  const second = await opened.writer.append([done("wash", 1, 900), done("gloves", 1)], stampAt(900));
  expect([first, second].map((answer) => answer.ok)).toEqual([true, true]);
  const read = await journal.read(sampleSession);
  expect(read.ok && read.kept.entries.map((entry) => entry.n)).toEqual([1, 2, 3]);
  expect(read.ok && read.kept.head).toBe(opened.writer.head);
});
