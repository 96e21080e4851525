import { expect, test } from "vitest";
import { memoryJournal, newSigner, penOf } from "./index";
import { began, done, sampleLife, sampleSession, smallOpening } from "./samples/smallSession";

const clock = { life: sampleLife, monoMs: () => 1234.56, wallMs: () => 482196050520, offsetMin: () => 90 };

test("stamps each batch with its times, its way and how it is known", async () => {
  const signer = await newSigner();
  const journal = memoryJournal(signer);
  const opened = await journal.open(smallOpening(signer.publicKey));
  if (!opened.ok) throw new Error(opened.message);
  const pen = penOf(opened.writer, clock);
  await pen.append([began], { by: "voice", confidence: 0.91 });
  await pen.append([done("washHands", 1)], { by: "clock" });
  const read = await journal.read(sampleSession);
  const stamp = { at: "1985-04-13T00:50:50.520+01:30", monoMs: 1235, life: sampleLife };
  expect(read.ok && read.kept.entries).toMatchObject([
    { ...stamp, way: { by: "voice", confidence: 0.91 }, known: "said" },
    { ...stamp, way: { by: "clock" }, known: "measured" },
  ]);
});

test("hands on why nothing was kept", async () => {
  const signer = await newSigner();
  const journal = memoryJournal(signer);
  const opened = await journal.open(smallOpening(signer.publicKey));
  if (!opened.ok) throw new Error(opened.message);
  journal.failNext("storage-full");
  expect(await penOf(opened.writer, clock).append([began], { by: "touch" })).toMatchObject({
    ok: false,
    code: "storage-full",
  });
});
