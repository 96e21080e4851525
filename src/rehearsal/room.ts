/**
 * A room in which the companion lives a session in sound time: its voice, its log and both its clocks go by the sound
 * that has passed. Every step waits until all is kept and said, so that the same sound tells the same story.
 */
import { begin } from "../../machines/session/decide";
import type { ClipManifest } from "../announcements/clips";
import { textOf, type Utterance, wordCount } from "../announcements/utterance";
import { type Companion, createCompanion } from "../app/companion";
import { type SealedRecord, sealRecord } from "../export";
import { knownBy, memoryJournal } from "../log";
import type { Heard } from "../recogniser";
import type { Pen } from "../session/keeper";
import { plannerHere } from "../turnaround/plannerPort";
import type { Opened } from "./opening";
import type { StoryLine } from "./story";
import { createTimedVoice } from "./timedVoice";

/** The companion's clocks are read once a second, as in the app. */
const tickMs = 1_000;

export interface Room {
  readonly companion: Companion;
  readonly story: readonly StoryLine[];
  /** Sound time, milliseconds. */
  readonly nowMs: number;
  /** Since when the companion has been silent; null while it speaks. */
  readonly silentSinceMs: number | null;
  onSpoken(listen: (utterance: Utterance) => void): void;
  /** So much sound has gone by. */
  pass(ms: number): Promise<void>;
  hear(heard: Heard): Promise<void>;
  talk(isOn: boolean): Promise<void>;
  seal(): Promise<SealedRecord>;
}

/** Rejects where the log does not open: it is in memory, so that is our own mistake. */
export async function enterRoom(opened: Opened, manifest: ClipManifest): Promise<Room> {
  const { input, record, signer, life, wallTimeAt } = opened;
  const story: StoryLine[] = [];
  let nowMs = 0;
  let writing = 0;
  let tickedMs = 0;

  const journal = memoryJournal(signer);
  const log = await journal.open(record);
  if (!log.ok) throw new Error(log.message);
  const { writer } = log;
  const pen: Pen = {
    async append(facts, way) {
      writing++;
      const stamp = { at: wallTimeAt(nowMs), monoMs: Math.round(nowMs), life, way, known: knownBy(way) };
      const written = await writer.append(facts, stamp);
      writing--;
      return written.ok ? { ok: true } : written;
    },
  };
  const voice = createTimedVoice(manifest, {
    cue: (cue) => void story.push({ atMs: nowMs, kind: "cue", cue }),
    cutOff: () => void story.push({ atMs: nowMs, kind: "cutOff" }),
  });
  const companion = createCompanion({ state: begin(input), pen, voice, planner: plannerHere() });

  companion.onSpoken((utterance) => {
    const { solicited } = utterance;
    const { phase } = companion.state.context.world;
    story.push({ atMs: nowMs, kind: "said", text: textOf(utterance), words: wordCount(utterance), solicited, phase });
  });
  companion.onMoment((moment) => {
    const byVoice = moment.way.by === "voice";
    if (!moment.kept) story.push({ atMs: nowMs, kind: "notKept", ...moment.trouble });
    else if (moment.facts.length > 0) story.push({ atMs: nowMs, kind: "kept", byVoice, facts: moment.facts });
    else if (byVoice) story.push({ atMs: nowMs, kind: "asked", question: moment.event.type });
  });

  /** Promises that are ready run before a timer of zero; a write that goes on is waited for. */
  const settle = async (): Promise<void> => {
    do await new Promise<void>((turn) => setImmediate(turn));
    while (writing > 0);
  };
  const today = (): string => wallTimeAt(nowMs).slice(0, 10);
  /** Both clocks agree, as on a device that is awake. */
  const tick = () => companion.tick({ monoMs: nowMs, wallMs: nowMs }, today());

  await companion.begin(today());
  await tick();
  await settle();

  return {
    companion,
    story,
    get nowMs() {
      return nowMs;
    },
    get silentSinceMs() {
      return voice.isSounding ? null : voice.silentSinceMs;
    },
    onSpoken: (listen) => void companion.onSpoken(listen),
    async pass(ms) {
      nowMs += ms;
      voice.passTo(nowMs);
      await settle();
      if (nowMs - tickedMs < tickMs) return;
      tickedMs += tickMs;
      await tick();
      await settle();
    },
    async hear(heard) {
      if (heard.kind === "understood") {
        const { command, confidence } = heard;
        story.push({ atMs: nowMs, kind: "heard", command, confidence });
      }
      if (heard.kind === "unsure") {
        const { candidates, confidences } = heard;
        story.push({ atMs: nowMs, kind: "unsure", candidates, confidences });
      }
      await companion.hear(heard);
      await settle();
    },
    async talk(isOn) {
      companion.talk(isOn);
      await settle();
    },
    seal: () => sealRecord(journal, writer, signer, wallTimeAt(nowMs)),
  };
}
