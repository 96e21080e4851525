/** The form's state. What stays the same from client to client is remembered on this device; the client never is. */
import { useState } from "react";
import type { Protocol } from "../../session/protocol";
import type { PrepareView } from "../model";
import { useShared } from "../useModel";
import { type Draft, type FromDraft, inputFrom } from "./draft";

export type Change = (part: Partial<Draft>) => void;

export interface DraftState {
  readonly draft: Draft;
  readonly change: Change;
  readonly protocol: Protocol;
  readonly from: FromDraft;
  readonly carriedOver: readonly string[];
}

export function useDraft(view: PrepareView): DraftState {
  const { language } = useShared();
  const [typed, setDraft] = useState<Draft>(view.draft);
  // The session is spoken in the language that the screens have now.
  const draft: Draft = { ...typed, language };
  const protocol = view.protocols.find((p) => p.id === draft.protocol) ?? view.protocols[0];
  if (!protocol) throw new Error("there is no protocol to choose");
  const left = view.carriedOver[draft.station.trim()] ?? [];
  const carriedOver = left.filter((id) => protocol.items.some((item) => item.id === id));
  return {
    draft,
    change: (part) => setDraft((now) => ({ ...now, ...part })),
    protocol,
    from: inputFrom(draft, protocol, view.today, view.zone, carriedOver),
    carriedOver,
  };
}
