/**
 * One session, wired: the companion with its pen, its voice, its ear and the clocks. What changed goes to the screen;
 * the close is sealed. Nothing is decided here.
 */
import type { SessionState } from "../../machines/session/decide";
import type { SessionEvent, Way } from "../../machines/session/vocabulary";
import { bookFor } from "../announcements/phrasebooks";
import { sayNote, sayNotKept } from "../announcements/sayNotice";
import type { Voice } from "../announcements/voice";
import type { CodeCamera } from "../barcode/codeCamera";
import { sealRecord } from "../export";
import { meaning } from "../intent/meaning";
import type { CommandId } from "../intent/phrases";
import { lingersMs } from "../intent/sayingNow";
import { type Writer, wallTime } from "../log";
import type { SoundSource } from "../microphone";
import { type NoteTaking, noteTaking } from "../notes/noteTaking";
import { doesListen, type Notice, type RecordView, type Sealing, type SessionView } from "../screen/model";
import { noticeAfter, withFile } from "../screen/session/notice";
import type { KeepTrouble } from "../session/keeper";
import type { PlannerPort } from "../turnaround/plannerPort";
import { todayIn } from "./calendar";
import { createCompanion } from "./companion";
import { keepAwake } from "./device";
import { penHere } from "./openSession";
import { planView } from "./planView";
import { saveSoFar } from "./saveSoFar";
import { watchCodes } from "./watchCodes";
import type { Hearing } from "./wireHearing";
import type { Log } from "./wireLog";

export interface SessionParts {
  readonly state: SessionState;
  readonly writer: Writer;
  readonly log: Log;
  readonly voice: Voice;
  readonly hearing: Hearing;
  readonly source: SoundSource;
  readonly planner: PlannerPort;
  readonly isPractice: boolean;
  /** Spoken notes that it holds already. */
  readonly notesSoFar: number;
  readonly letterKeys: boolean;
  readonly camera: CodeCamera;
  /** The camera opens by itself where a code is wanted; else only when it is asked for. */
  readonly readsCodes: boolean;
  readonly show: (view: SessionView | RecordView) => void;
  readonly closed: () => void;
}

export interface RunningSession {
  /** Null when its first fact is on disk, or why it is not; then it must be ended. */
  readonly started: Promise<KeepTrouble | null>;
  tell(event: SessionEvent, way: Way): void;
  command(command: CommandId, way: Way): void;
  /** Hands over the record of what is kept by now; says and shows where it is not whole, or there is none. */
  save(put: (text: string) => void): Promise<void>;
  readonly session: string;
  end(): Promise<void>;
}

const tickMs = 1_000;
/** The companion's own words ring on in the room for a while; what the microphone hears of them is nobody's talk. */
const ringsOnMs = 400;

export function runSession(parts: SessionParts): RunningSession {
  const { state, writer, log, voice, hearing, planner, isPractice, letterKeys, show } = parts;
  const { input } = state.context;
  // A recorded session is walked as it was recorded; its plan is only shown.
  const companion = createCompanion({
    ...{ state, pen: penHere(writer), voice, planner, leads: !isPractice },
    notes: {
      get isOn() {
        return notes !== null && notes.now !== null;
      },
      begin: (way) => notes?.begin(way) ?? false,
    },
  });
  const notes: NoteTaking | null = isPractice
    ? null
    : noteTaking({
        writer,
        soFar: parts.notesSoFar,
        hears: () => doesListen(hearing.condition.now),
        tap: hearing.tap,
        tell: companion.tell,
        say: (what) => companion.announce([what === "notKept" ? sayNotKept(book, "writeFailed") : sayNote(book, what)]),
        changed: companion.lookAgain,
      });
  const book = bookFor(input.language);
  let notice: Notice | null = null;
  let sealing: Sealing | null = null;
  let recordText: string | null = null;
  let ownVoiceUntilMs = 0;
  let shownListened: ReadonlySet<CommandId> = new Set();

  const draw = (): void => {
    if (sealing) show({ at: "record", state: companion.state, sealing, isPractice });
    else showSession();
  };
  const showSession = (): void => {
    const listened = companion.listenedFor;
    const isSame = listened.size === shownListened.size && [...listened].every((command) => shownListened.has(command));
    // The same set while it holds the same: what shows it is then not drawn anew at every second.
    if (!isSame) shownListened = listened;
    show({
      at: "session",
      state: companion.state,
      speaking: companion.speaking,
      lastHeard: companion.lastHeard?.command ?? null,
      listenedFor: shownListened,
      notice,
      handCount: companion.handCount,
      plan: planView(companion, Date.now()),
      note: notes?.now ?? null,
      ear: hearing.condition.now,
      isPractice,
      letterKeys,
      readsCodes: codes.isOpen,
    });
  };

  const seal = async (): Promise<void> => {
    sealing = { step: "sealing" };
    draw();
    const sealed = await sealRecord(log.journal, writer, log.signer, wallTime(Date.now()));
    sealing = sealed.ok ? { step: "sealed", record: sealed.record } : { step: "failed", code: sealed.code };
    recordText = sealed.ok ? sealed.text : null;
    draw();
  };

  const codes = watchCodes(parts.camera, parts.readsCodes, (event) => void companion.tell(event, { by: "scan" }));

  const stops = [
    companion.onChange(() => {
      notes?.speaks(companion.speaking !== null);
      hearing.allow(companion.listenedFor);
      codes.look(companion.state);
      draw();
    }),
    companion.onSpoken((utterance) => notes?.sounds(utterance)),
    hearing.condition.subscribe(() => !doesListen(hearing.condition.now) && notes?.end()),
    companion.onMoment((moment) => {
      notes?.after(moment);
      notice = noticeAfter(book, moment, notice);
      if (moment.kept && moment.event.type === "code.wanted") codes.open(moment.after);
      if (!moment.kept || !moment.facts.some((fact) => fact.type === "v1.SessionClosed")) return;
      parts.closed();
      codes.stop();
      stopListening();
      void seal();
    }),
    voice.onSounding((text) => {
      ownVoiceUntilMs = text === null ? performance.now() + ringsOnMs : Number.POSITIVE_INFINITY;
      if (text !== null) hearing.saying(text);
      else setTimeout(() => performance.now() >= ownVoiceUntilMs && hearing.saying(null), lingersMs);
    }),
    hearing.condition.subscribe(draw),
    keepAwake(),
    ticking(() => {
      const reading = { monoMs: performance.now(), wallMs: Date.now() };
      void companion.tick(reading, todayIn(input.zone, reading.wallMs));
    }),
  ];

  const stopListening = (): void => hearing.stop();
  const byApp = { by: "app" } as const;
  hearing.allow(companion.listenedFor);

  /** A session killed between its close and its seal is sealed now; any other begins, or goes on. */
  const start = async (): Promise<KeepTrouble | null> => {
    const { world } = state.context;
    if (world.phase === "closed") {
      await seal();
      return null;
    }
    const begun = world.count === 0;
    const moment = await (begun ? companion.begin(todayIn(input.zone, Date.now())) : companion.reopen());
    if (begun && !moment.kept) return moment.trouble;
    hearing.listen(
      parts.source,
      input.address,
      {
        heard: (heard) => void companion.hear(heard),
        talk: (isOn) => {
          if (!isOn || performance.now() > ownVoiceUntilMs) companion.talk(isOn);
        },
        lost: () => void companion.tell({ type: "ear.lost" }, byApp),
        back: () => void companion.tell({ type: "ear.back" }, byApp),
      },
      book.language,
    );
    draw();
    return null;
  };

  return {
    started: start(),
    session: writer.session,
    async save(put) {
      const { session } = writer;
      const file = await saveSoFar({
        read: () => log.journal.read(session),
        sealed: recordText,
        signed: () => writer.signed,
        put,
      });
      if (file === "none") companion.announce([sayNotKept(book, "writeFailed")]);
      notice = withFile(notice, file);
      draw();
    },
    tell(event, way) {
      notes?.byHand(event.type);
      void companion.tell(event, way);
    },
    command(command, way) {
      if (command === "note" && notes?.now) return notes.end();
      const wish = meaning[command];
      if (wish.type === "voice.louder" || wish.type === "voice.quieter") {
        voice.changeVolume(wish.type === "voice.louder" ? "louder" : "quieter");
        voice.cue("heard");
      } else {
        if (wish.type !== "voice.hush") notes?.byHand(wish.type);
        void companion.command(command, way);
      }
    },
    async end() {
      codes.stop();
      for (const stop of stops) stop();
      stopListening();
      notes?.close();
      companion.close();
      voice.stop();
      await writer.release();
    },
  };
}

/** Once a second, and at once when the page is looked at again. @returns stops it. */
function ticking(tick: () => void): () => void {
  const id = setInterval(tick, tickMs);
  document.addEventListener("visibilitychange", tick);
  return () => {
    clearInterval(id);
    document.removeEventListener("visibilitychange", tick);
  };
}
