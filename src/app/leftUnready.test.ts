import { describe, expect, it } from "vitest";
import type { SessionEvent } from "../../machines/session/vocabulary";
import { begun, inputFor, told } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { sealRecord } from "../export";
import { memoryJournal, newSigner, openRecord, uuidv7, wallTime } from "../log";
import { penHere } from "./openSession";
import { leftUnready } from "./wireLog";

const done: SessionEvent = { type: "step.done" };
/** Five steps of the set-up, then the session ends by an accident with gloves on and everything covered. */
const brokenOff: readonly SessionEvent[] = [
  done,
  done,
  done,
  done,
  done,
  { type: "exposure.reported" },
  { type: "answer.yes" },
  { type: "answer.confirm" },
  { type: "session.close" },
  { type: "answer.confirm" },
];

async function studio() {
  const signer = await newSigner();
  const journal = memoryJournal(signer);
  const hold = async (station: string, events: readonly SessionEvent[], seals: boolean) => {
    const input = inputFor(smallProtocol, { station });
    const opening = openRecord({
      session: uuidv7(),
      input,
      rules: "1.0.0",
      phraseModel: null,
      appVersion: "0.1.0",
      device: signer.publicKey,
      previousHead: null,
    });
    const opened = await journal.open(opening);
    if (!opened.ok) return expect.fail(opened.message);
    await penHere(opened.writer).append(told(begun(input), ...events).facts, { by: "keyboard" });
    if (seals) await sealRecord(journal, opened.writer, signer, wallTime(Date.now()));
  };
  return { journal, hold };
}

describe("what a station was left with", () => {
  it("is what its newest sealed record says was not ready", async () => {
    const { journal, hold } = await studio();
    await hold("Station 1", brokenOff, true);
    expect(await leftUnready(journal)).toEqual({ "Station 1": ["chair", "lamp", "cup"] });
  });

  it("is each station's own", async () => {
    const { journal, hold } = await studio();
    await hold("Station 1", brokenOff, true);
    await hold("Station 2", brokenOff, true);
    expect(Object.keys(await leftUnready(journal)).sort()).toEqual(["Station 1", "Station 2"]);
  });

  it("is not guessed from a session that still goes on", async () => {
    const { journal, hold } = await studio();
    await hold("Station 1", [done], false);
    expect(await leftUnready(journal)).toEqual({});
  });
});
