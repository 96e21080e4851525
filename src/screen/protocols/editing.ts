/**
 * One protocol being edited: its history, the check that follows every change, and the draft that is kept meanwhile.
 * The newest text is what counts: an older check is stopped, and a draft is written once the typing pauses.
 */
import type { Progress, Verdict } from "../../check/checkProtocol";
import type { Edit } from "../../drafting/edit";
import type { FieldTrouble } from "../../drafting/fieldTrouble";
import { type Findings, findingsOf, noFindings } from "../../drafting/findings";
import { edited, type History, historyOf, redone, runEnded, saved, undone } from "../../drafting/history";
import { nextVersion } from "../../drafting/version";
import type { Protocol } from "../../session/protocol";
import type { ProtocolsModel, RunningCheck, Saved } from "./protocolsModel";

export type CheckNow =
  | { readonly at: "waiting" }
  | { readonly at: "checking"; readonly so: Progress | null }
  | { readonly at: "done"; readonly verdict: Verdict };

export interface EditorState {
  readonly history: History;
  /** As it was saved last; null where it never was. */
  readonly saved: Protocol | null;
  readonly check: CheckNow;
  /** Of the last check that ended; of an older text while `check` is not done. */
  readonly findings: Findings;
  /** Null: all of it is on disk. */
  readonly notKept: string | null;
  readonly saving: "no" | "running" | Saved["kind"];
}

export interface EditorPorts extends Pick<ProtocolsModel, "check" | "keepDraft" | "save"> {
  /** Runs later, unless it is taken back. @returns takes it back. */
  readonly later: (ms: number, run: () => void) => () => void;
}

const checkAfterMs = 450;
const keepAfterMs = 350;

export function editing(first: Protocol, savedFirst: Protocol | null, ports: EditorPorts) {
  const listeners = new Set<() => void>();
  let state: EditorState = {
    history: historyOf(first),
    saved: savedFirst,
    check: { at: "waiting" },
    findings: noFindings,
    notKept: null,
    saving: "no",
  };
  let kept = first;
  let running: RunningCheck | null = null;
  let forgetCheck: () => void = () => undefined;
  let forgetKeep: () => void = () => undefined;

  const put = (part: Partial<EditorState>): void => {
    state = { ...state, ...part };
    for (const listen of [...listeners]) listen();
  };

  const startCheck = (): void => {
    const protocol = state.history.present;
    const mine = ports.check(protocol, (so) => {
      if (running === mine) put({ check: { at: "checking", so } });
    });
    running = mine;
    put({ check: { at: "checking", so: null } });
    void mine.verdict.then((verdict) => {
      if (running !== mine) return;
      running = null;
      put({ check: { at: "done", verdict }, findings: findingsOf(verdict, protocol) });
    });
  };
  const stopCheck = (): void => {
    forgetCheck();
    const old = running;
    running = null;
    old?.stop();
  };
  const checkSoon = (ms = checkAfterMs): void => {
    stopCheck();
    put({ check: { at: "waiting" } });
    forgetCheck = ports.later(ms, startCheck);
  };

  const keepNow = async (): Promise<void> => {
    forgetKeep();
    const { present } = state.history;
    if (present === kept) return;
    const words = await ports.keepDraft(present, state.saved);
    if (words === null) kept = present;
    put({ notKept: words });
  };

  const move = (history: History): void => {
    const isOther = history.present !== state.history.present;
    put({ history, ...(isOther && { saving: "no" as const }) });
    if (!isOther) return;
    checkSoon();
    forgetKeep();
    forgetKeep = ports.later(keepAfterMs, () => void keepNow());
  };

  return {
    get now(): EditorState {
      return state;
    },
    subscribe(listen: () => void): () => void {
      listeners.add(listen);
      return () => listeners.delete(listen);
    },
    start: () => checkSoon(0),
    /** Writes what is not yet written, and ends the check. */
    stop(): void {
      stopCheck();
      void keepNow();
    },
    keepNow,
    /** @returns the field at fault, and then nothing has changed. */
    edit(edit: Edit): FieldTrouble | null {
      const next = edited(state.history, edit);
      if (next.trouble === null) move(next.history);
      return next.trouble;
    },
    endRun: () => put({ history: runEnded(state.history) }),
    undo: () => move(undone(state.history)),
    redo: () => move(redone(state.history)),
    /** With its next version: proved, or a draft. @returns what it came to. */
    async save(act: (next: Protocol) => string): Promise<Saved> {
      forgetKeep();
      const before = state.history.present;
      const next = { ...before, version: nextVersion(state.saved, before) };
      put({ saving: "running" });
      const came = await ports.save(next, act(next));
      if (came.kind === "notKept") {
        put({ saving: came.kind, notKept: came.words });
        return came;
      }
      const isStill = state.history.present === before;
      put({ saved: next, notKept: null, saving: came.kind });
      if (isStill) {
        kept = next;
        put({ history: saved(state.history, next) });
        if (came.kind === "draft") {
          stopCheck();
          put({ check: { at: "done", verdict: came.verdict }, findings: findingsOf(came.verdict, next) });
        }
      } else {
        // What was typed meanwhile counts from the version that was just saved.
        forgetKeep = ports.later(keepAfterMs, () => void keepNow());
      }
      return came;
    },
  };
}

export type Editing = ReturnType<typeof editing>;
