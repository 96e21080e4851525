/** A draft with what it was before: every change can be taken back, and taken up again, one act at a time. */
import type { Protocol } from "../session/protocol";
import { type Act, applyEdit, type Edit, runOf } from "./edit";
import type { FieldTrouble } from "./fieldTrouble";

interface Moment {
  readonly protocol: Protocol;
  readonly act: Act | "save";
}

export interface History {
  /** Oldest first; `act` is what was done to it. */
  readonly past: readonly Moment[];
  readonly present: Protocol;
  /** Next first; `act` is what leads there. */
  readonly future: readonly Moment[];
  /** The field that is being typed in. */
  readonly run: string | null;
}

/** Acts that can be taken back; the oldest fall away. */
const longest = 300;

export const historyOf = (protocol: Protocol): History => ({ past: [], present: protocol, future: [], run: null });

export type Edited = { readonly history: History; readonly trouble: FieldTrouble | null };

/** @returns the same history, and the field at fault, where the edit would leave no protocol. */
export function edited(history: History, edit: Edit): Edited {
  const next = applyEdit(history.present, edit);
  if (!next.ok) return { history, trouble: next.trouble };
  const run = runOf(edit);
  const goesOn = run !== null && run === history.run && history.past.length > 0;
  return {
    history: goesOn ? typed(history, next.protocol) : moved(history, next.protocol, edit.do, run),
    trouble: null,
  };
}

const typed = (history: History, present: Protocol): History => ({ ...history, present, future: [] });

function moved(history: History, present: Protocol, act: Moment["act"], run: string | null): History {
  const past = [...history.past, { protocol: history.present, act }].slice(-longest);
  return { past, present, future: [], run };
}

/** A save gives the draft its next version; that can be taken back like anything else. */
export const saved = (history: History, protocol: Protocol): History => moved(history, protocol, "save", null);

/** The field was left: what is typed there next is an act of its own. */
export const runEnded = (history: History): History => (history.run === null ? history : { ...history, run: null });

export const undoable = ({ past }: History): Moment["act"] | null => past.at(-1)?.act ?? null;
export const redoable = ({ future }: History): Moment["act"] | null => future[0]?.act ?? null;

export function undone(history: History): History {
  const last = history.past.at(-1);
  if (!last) return history;
  const future = [{ protocol: history.present, act: last.act }, ...history.future];
  return { past: history.past.slice(0, -1), present: last.protocol, future, run: null };
}

export function redone(history: History): History {
  const [next, ...future] = history.future;
  if (!next) return history;
  const past = [...history.past, { protocol: history.present, act: next.act }];
  return { past, present: next.protocol, future, run: null };
}
