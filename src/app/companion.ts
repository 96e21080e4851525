/**
 * The second person in the room, without its ears, mouth and disk: those are handed in. The browser, the command line
 * and the tests run this same one. What is heard becomes an event, the event is kept, and what was kept is spoken.
 */
import { decideAnnouncing, startAnnouncing } from "../../machines/announcing/decide";
import type { AnnouncingEvent } from "../../machines/announcing/vocabulary";
import { doubtMs } from "../../machines/listening/vocabulary";
import type { SessionState } from "../../machines/session/decide";
import { listenedFor } from "../../machines/session/listenedFor";
import type { SessionEvent, Way } from "../../machines/session/vocabulary";
import { announce, announceReopened, askedBy, cueFor, outOfUseNow } from "../announcements/announce";
import { bookFor } from "../announcements/phrasebooks";
import { sayCount, sayCountBegun } from "../announcements/sayHands";
import { sayVolume } from "../announcements/sayNotice";
import { sayReady } from "../announcements/sayPlan";
import { askPhrase, questionKey } from "../announcements/sayQuestion";
import { textOf, type Utterance } from "../announcements/utterance";
import type { Voice } from "../announcements/voice";
import { asksForCount, countAfter, countOn } from "../hands/handCount";
import type { HandTimer } from "../hands/timer";
import { meaning } from "../intent/meaning";
import type { CommandId } from "../intent/phrases";
import type { Heard } from "../recogniser/heard";
import { createKeeper, type Moment, type Pen } from "../session/keeper";
import { type ClockReading, watched } from "../session/watch";
import type { Forecast } from "../turnaround/breakdown/forecast";
import type { PlannerPort } from "../turnaround/plannerPort";
import { createLeader } from "./leader";

export interface Companion {
  /** Everything in it is on disk. */
  readonly state: SessionState;
  /** What is being spoken, as text; null in silence. */
  readonly speaking: string | null;
  readonly lastHeard: { readonly command: CommandId; readonly confidence: number } | null;
  /** The hand timer, where the artist asked for it. */
  readonly handCount: HandTimer | null;
  /** The commands to listen for just now. */
  readonly listenedFor: ReadonlySet<CommandId>;
  /** Begins a new session: its first fact, then its first words. */
  begin(today: string): Promise<Moment>;
  /** Goes on with a session read from disk: nobody watched meanwhile, and that is kept first. */
  reopen(): Promise<Moment>;
  tell(event: SessionEvent, way: Way): Promise<Moment>;
  /** A command that was given by hand. */
  command(command: CommandId, way: Way): Promise<void>;
  /** Says something that no event brings. */
  announce(utterances: readonly Utterance[]): void;
  /** Something outside has changed that decides what is listened for. */
  lookAgain(): void;
  hear(heard: Heard): Promise<void>;
  /** People talk, or have stopped; what is not urgent waits for a pause. */
  talk(isOn: boolean): void;
  /** At least once a second while the page lives. `today` as the calendar of the station says, YYYY-MM-DD. */
  tick(reading: ClockReading, today: string): Promise<void>;
  /** After every change of any of the above. */
  onChange(listen: () => void): () => void;
  onMoment(listen: (moment: Moment) => void): () => void;
  /** Each utterance as it begins to sound. */
  onSpoken(listen: (utterance: Utterance) => void): () => void;
  /** What the plan of the breakdown foretells; null where there is none. */
  readonly forecast: Forecast | null;
  /** Lets the planner go. */
  close(): void;
}

export interface CompanionParts {
  readonly state: SessionState;
  readonly pen: Pen;
  readonly voice: Voice;
  /** Takes spoken notes; without, a note is an event that is only marked. */
  readonly notes?: { readonly isOn: boolean; begin(way: Way): boolean };
  /** Without one, the breakdown is walked as it is written. */
  readonly planner?: PlannerPort;
  /** False: the plan is only foretold, and nothing is led by it. */
  readonly leads?: boolean;
}

const whileNoting: ReadonlySet<CommandId> = new Set(["accident"]);

export function createCompanion({ state, pen, voice, notes, planner, leads = true }: CompanionParts): Companion {
  const keeper = createKeeper(state, pen);
  const { language } = state.context.input;
  const book = bookFor(language);
  const changed = new Set<() => void>();
  const spoken = new Set<(utterance: Utterance) => void>();
  let announcing = startAnnouncing(language);
  let speaking: { turn: number; utterance: Utterance } | null = null;
  let lastHeard: Companion["lastHeard"] = null;
  /** It was not sure what was said: the phrase that was asked about, and those still to ask. */
  let doubt: readonly CommandId[] = [];
  let doubtForMs = 0;
  let lastReading: ClockReading | null = null;
  let count: HandTimer | null = null;
  /** From the first whole tick after "from now" has been said. */
  let countRuns = false;

  const tellChange = (): void => {
    for (const listen of changed) listen();
  };

  const toAnnouncing = (event: AnnouncingEvent): void => {
    const { next, orders } = decideAnnouncing(announcing, event);
    announcing = next;
    for (const order of orders) {
      if (order.type === "voice.stop") {
        speaking = null;
        voice.stop();
      } else {
        speaking = order;
        for (const listen of spoken) listen(order.utterance);
        voice.speak(order.turn, order.utterance);
        const asked = askedBy(order.utterance);
        if (asked) void keeper.tell(asked, { by: "app" });
      }
    }
    if (orders.length > 0) tellChange();
  };

  const say = (utterances: readonly Utterance[]): void => {
    // One question stands at a time: a yes from now on answers the newer one.
    if (utterances.some(({ key }) => key === questionKey)) doubt = [];
    if (utterances.length > 0) toAnnouncing({ type: "announce", utterances });
  };
  const askWhether = (phrases: readonly CommandId[]): void => {
    const [likelier] = phrases;
    if (likelier === undefined) return;
    say([askPhrase(book, likelier)]);
    doubt = phrases;
    doubtForMs = 0;
  };
  /**
   * A question that nobody answers is dropped: a yes to something else, much later, is none to it.
   * @param elapsedMs null for time that nobody watched.
   */
  const letDoubtLapse = (elapsedMs: number | null): void => {
    if (doubt.length === 0) return;
    if (speaking === null) doubtForMs += elapsedMs ?? 0;
    if (elapsedMs !== null && doubtForMs < doubtMs) return;
    doubt = [];
    tellChange();
  };

  const leader = planner
    ? createLeader({
        planner,
        leads,
        state: () => keeper.state,
        tell: (event) => void keeper.tell(event, { by: "app" }),
        say: (ready, ms) => say([sayReady(book, ready, ms, outOfUseNow(keeper.state))]),
        changed: tellChange,
      })
    : null;

  voice.onEnded((turn, end) => {
    if (speaking?.turn === turn) speaking = null;
    toAnnouncing({ type: end === "ended" ? "voice.ended" : "voice.failed", turn });
    tellChange();
  });

  keeper.onMoment((moment) => {
    const cue = moment.kept ? cueFor(moment.facts) : "refused";
    if (cue) voice.cue(cue);
    count = countAfter(count, moment);
    if (count && asksForCount(moment)) {
      countRuns = false;
      say([sayCountBegun(book, count)]);
    } else say(announce(book, moment, leader?.readyInMs ?? null));
    leader?.after(moment);
    tellChange();
  });

  const countHands = (elapsedMs: number | null): void => {
    if (!count) return;
    if (!countRuns) {
      countRuns = speaking === null;
      return;
    }
    const { timer, say: words } = countOn(count, elapsedMs);
    count = timer;
    say(words.map((one) => sayCount(book, one, timer)));
    tellChange();
  };

  const act = async (command: CommandId, way: Way): Promise<void> => {
    const wish = meaning[command];
    if (wish.type === "voice.louder" || wish.type === "voice.quieter") {
      say([sayVolume(book, voice.changeVolume(wish.type === "voice.louder" ? "louder" : "quieter"))]);
      return;
    }
    if (command === "note" && notes?.begin(way)) return;
    if (wish.type === "voice.hush") toAnnouncing({ type: "announcement.hush" });
    else await keeper.tell(wish, way);
  };

  /** A yes or a no while a phrase is in doubt answers that, and nothing else. */
  const settle = (command: CommandId): CommandId | null => {
    const [asked, ...others] = doubt;
    doubt = [];
    if (asked === undefined || (command !== "yes" && command !== "no")) return command;
    if (command === "yes") return asked;
    askWhether(others);
    return null;
  };

  return {
    get state() {
      return keeper.state;
    },
    get speaking() {
      return speaking && textOf(speaking.utterance);
    },
    get lastHeard() {
      return lastHeard;
    },
    get handCount() {
      return count;
    },
    get listenedFor() {
      // What is said into a note is for the note: "sprayed" in it reports nothing. An accident cannot wait for its end.
      if (notes?.isOn) return whileNoting;
      const now = listenedFor(keeper.state);
      return doubt.length > 0 ? new Set<CommandId>([...now, "yes", "no"]) : now;
    },
    begin: (today) => keeper.tell({ type: "session.begin", today }, { by: "app" }),
    async reopen() {
      const moment = await keeper.tell({ type: "time.gap", why: "reload" }, { by: "clock" });
      say(announceReopened(book, keeper.state));
      return moment;
    },
    tell: (event, way) => keeper.tell(event, way),
    command: act,
    announce: say,
    lookAgain: tellChange,
    async hear(heard) {
      if (heard.kind === "noise") return;
      // Heard by the set before: the recogniser may be a breath behind.
      if (notes?.isOn && !(heard.kind === "understood" && whileNoting.has(heard.command))) return;
      voice.cue("heard");
      if (heard.kind === "unsure") {
        askWhether(heard.candidates);
        tellChange();
        return;
      }
      lastHeard = { command: heard.command, confidence: heard.confidence };
      const meant = settle(heard.command);
      tellChange();
      if (meant !== null) await act(meant, { by: "voice", confidence: heard.confidence });
    },
    talk: (isOn) => toAnnouncing({ type: isOn ? "talk.started" : "talk.ended" }),
    async tick(reading, today) {
      const passed = lastReading ? watched(lastReading, reading) : null;
      lastReading = reading;
      if (!passed) return;
      countHands(passed.type === "time.gap" ? null : passed.elapsedMs);
      letDoubtLapse(passed.type === "time.gap" ? null : passed.elapsedMs);
      if (passed.type === "time.gap") {
        await keeper.tell(passed, { by: "clock" });
        return;
      }
      toAnnouncing({ type: "time.witnessed", elapsedMs: passed.elapsedMs });
      await keeper.tell({ ...passed, today }, { by: "clock" });
    },
    onChange(listen) {
      changed.add(listen);
      return () => changed.delete(listen);
    },
    get forecast() {
      return leader?.forecast ?? null;
    },
    close: () => leader?.close(),
    onMoment: (listen) => keeper.onMoment(listen),
    onSpoken(listen) {
      spoken.add(listen);
      return () => spoken.delete(listen);
    },
  };
}
