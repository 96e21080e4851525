import { describe, expect, test } from "vitest";
import type { Way } from "../../machines/session/vocabulary";
import { begun, inputFor } from "../../tests/support/session";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { openingFor } from "../export/samples/lived";
import { type Journal, memoryJournal, newSigner, penOf } from "../log";
import { createKeeper } from "../session/keeper";
import { mostNotes, noteTaking } from "./noteTaking";

const rateHz = 16_000;
const byVoice: Way = { by: "voice", confidence: 0.9 };
const recording = { key: "recording", parts: [], urgency: "now", solicited: true } as const;
let seed = 3;
const noise = (): number => {
  seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
  return seed / 1_073_741_824 - 1;
};

/** A session in memory whose first facts are kept, a microphone of ours, and what is said. */
async function station(soFar = 0) {
  const signer = await newSigner();
  const journal = memoryJournal(signer);
  const input = inputFor(smallProtocol);
  const opened = await journal.open(openingFor(input, signer.publicKey));
  if (!opened.ok) throw new Error(opened.message);
  const { writer } = opened;
  const clock = { life: "017f22e2-79b0-7000-8000-000000000001", monoMs: () => 0, wallMs: () => 0 };
  const first = begun(input);
  const pen = penOf(writer, clock);
  await pen.append(first.facts, { by: "app" });
  const keeper = createKeeper(first.state, pen);
  const said: string[] = [];
  let give: (samples: Float32Array, rateHz: number) => void = () => undefined;
  let hears = true;
  let told = Promise.resolve<unknown>(undefined);
  const notes = noteTaking({
    writer,
    soFar,
    hears: () => hears,
    tap(listen) {
      give = listen;
      return () => undefined;
    },
    tell(event, way) {
      const telling = keeper.tell(event, way);
      told = telling;
      return telling;
    },
    say: (what) => said.push(what),
    changed: () => undefined,
  });
  const sound = (ms: number, loud: number) => {
    for (let at = 0; at < ms; at += 100)
      give(
        Float32Array.from({ length: rateHz / 10 }, (_, n) => loud * Math.sin(n / 7) + 0.003 * noise()),
        rateHz,
      );
  };
  const facts = async () => {
    await told;
    const read = await journal.read(writer.session);
    if (!read.ok) throw new Error(read.message);
    const kept = read.kept.entries.map(({ fact }) => fact.type);
    return { kept: kept.filter((type) => type === "v1.NoteKept").length, personal: read.kept.personal.length - 1 };
  };
  /** As the companion does: says "recording", and is silent again. */
  const begin = () => {
    notes.begin(byVoice);
    notes.sounds(recording);
    notes.speaks(true);
    notes.speaks(false);
  };
  return { notes, sound, facts, said, begin, journal, keeper, deafen: () => (hears = false) };
}

async function all(journal: Journal) {
  const listed = await journal.all();
  const read = await Promise.all((listed.ok ? listed.sessions : []).map(({ session }) => journal.read(session)));
  return read.flatMap((one) => (one.ok ? [one.kept] : []));
}

describe("taking a note", () => {
  test("says that it records, records until a silence, and tells the session; the fact says that it is kept", async () => {
    const { notes, sound, facts, said, begin } = await station();
    begin();
    expect(notes.now?.at).toBe("recording");
    sound(500, 0);
    sound(3_000, 0.3);
    expect(await facts()).toEqual({ kept: 0, personal: 0 });
    sound(4_000, 0);
    expect(await facts()).toEqual({ kept: 1, personal: 1 });
    expect([said, notes.now]).toEqual([["recording"], null]);
  });

  test("does not record its own word: the note begins when it was said", async () => {
    const { notes, sound } = await station();
    notes.begin(byVoice);
    sound(300, 0.3);
    expect(notes.now?.at).toBe("announced");
    notes.speaks(false);
    expect(notes.now?.at).toBe("announced");
    notes.sounds(recording);
    notes.speaks(true);
    notes.speaks(false);
    expect(notes.now).toEqual({ at: "recording", leftMs: 30_000 });
  });

  test("records also where no voice can say so", async () => {
    const { notes, sound } = await station();
    notes.begin(byVoice);
    sound(5_000, 0);
    expect(notes.now?.at).toBe("recording");
  });

  test("keeps what was said so far when it is ended by hand", async () => {
    const { notes, sound, facts, begin } = await station();
    begin();
    sound(1_500, 0.3);
    notes.end();
    expect(await facts()).toEqual({ kept: 1, personal: 1 });
  });

  test("an accident goes first, and what was said into the note before it is kept after it", async () => {
    const { notes, sound, facts, begin, journal, keeper } = await station();
    keeper.onMoment(notes.after);
    begin();
    sound(1_500, 0.3);
    notes.byHand("exposure.reported");
    expect(notes.now?.at).toBe("recording");
    await keeper.tell({ type: "exposure.reported" }, byVoice);
    expect(await facts()).toEqual({ kept: 1, personal: 1 });
    const [session] = await all(journal);
    const types = session?.entries.map(({ fact }) => fact.type) ?? [];
    expect(types.indexOf("v1.ExposureReported")).toBeLessThan(types.indexOf("v1.NoteKept"));
  });

  test("a pause given by hand comes after the note that it ends", async () => {
    const { notes, sound, facts, begin, journal, keeper } = await station();
    begin();
    sound(1_500, 0.3);
    notes.byHand("session.pause");
    await keeper.tell({ type: "session.pause" }, { by: "touch" });
    expect(await facts()).toEqual({ kept: 1, personal: 1 });
    const [session] = await all(journal);
    const types = session?.entries.map(({ fact }) => fact.type) ?? [];
    expect(types.slice(-2)).toEqual(["v1.NoteKept", "v1.Paused"]);
  });

  test("keeps nothing where nobody speaks, and says so", async () => {
    const { notes, sound, facts, said, begin } = await station();
    begin();
    sound(9_000, 0);
    expect([await facts(), said, notes.now]).toEqual([{ kept: 0, personal: 0 }, ["recording", "nothing"], null]);
  });

  test("keeps neither fact nor sound on a full disk, and the session goes on", async () => {
    const { notes, sound, facts, begin, journal, keeper } = await station();
    begin();
    sound(1_500, 0.3);
    journal.failNext("storage-full");
    const moments: unknown[] = [];
    keeper.onMoment((moment) => moments.push(moment.kept || moment.trouble.code));
    notes.end();
    expect(await facts()).toEqual({ kept: 0, personal: 0 });
    expect([moments, notes.now]).toEqual([["storage-full"], null]);
    expect(await keeper.tell({ type: "step.done" }, byVoice)).toMatchObject({ kept: true });
  });

  test("says not kept where the session was closed meanwhile", async () => {
    const { state } = begun(inputFor(smallProtocol));
    const { context } = state;
    const closed = { ...state, context: { ...context, world: { ...context.world, phase: "closed" as const } } };
    const keeper = createKeeper(closed as typeof state, { append: async () => ({ ok: true }) });
    const said: string[] = [];
    let give: (samples: Float32Array, rateHz: number) => void = () => undefined;
    let telling: Promise<unknown> = Promise.resolve();
    const notes = noteTaking({
      writer: { attach: () => undefined },
      soFar: 0,
      hears: () => true,
      tap(listen) {
        give = listen;
        return () => undefined;
      },
      tell(event, way) {
        const answer = keeper.tell(event, way);
        telling = answer;
        return answer;
      },
      say: (what) => said.push(what),
      changed: () => undefined,
    });
    notes.begin(byVoice);
    notes.sounds(recording);
    notes.speaks(false);
    for (let at = 0; at < 10; at++) give(new Float32Array(1_600).fill(0.2), rateHz);
    notes.end();
    await telling;
    expect(said).toEqual(["recording", "notKept"]);
  });

  test("without an ear nothing is recorded; the event is then only marked", async () => {
    const { notes, said, deafen } = await station();
    deafen();
    expect([notes.begin(byVoice), notes.now, said]).toEqual([false, null, []]);
  });

  test("a record that is full of notes takes no more, and says so", async () => {
    const { notes, said } = await station(mostNotes);
    expect([notes.begin(byVoice), notes.now, said]).toEqual([true, null, ["enough"]]);
  });
});
