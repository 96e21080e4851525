/** A screen's hold on the protocol being edited, and what every part of the editor needs. */
import { createContext, useContext, useEffect, useState, useSyncExternalStore } from "react";
import type { Edit } from "../../drafting/edit";
import type { Place } from "../../drafting/place";
import type { Protocol } from "../../session/protocol";
import { type Editing, type EditorState, editing } from "./editing";
import type { ProtocolsModel } from "./protocolsModel";

export type PartId = Place | "about" | "items" | "products";

export interface EditorShared {
  readonly editor: Editing;
  readonly state: EditorState;
  readonly protocol: Protocol;
  readonly protocols: ProtocolsModel;
  readonly isReadOnly: boolean;
  /** Makes the edit; what kept it from being made is told beside the field or, without one, in the bar. */
  readonly edit: (edit: Edit) => void;
  readonly openParts: ReadonlySet<PartId>;
  readonly openPart: (part: PartId, isOpen: boolean) => void;
  readonly openStep: string | null;
  readonly setOpenStep: (step: string | null) => void;
  /** The element that gets the focus once it is there. */
  readonly focusOn: (id: string) => void;
}

export const EditorContext = createContext<EditorShared | null>(null);

export function useEditor(): EditorShared {
  const shared = useContext(EditorContext);
  if (!shared) throw new Error("a part of the editor stands outside it");
  return shared;
}

const later = (ms: number, run: () => void) => {
  const wait = setTimeout(run, ms);
  return () => clearTimeout(wait);
};

export function useEditing(first: Protocol, saved: Protocol | null, protocols: ProtocolsModel): Editing {
  const [editor] = useState(() => editing(first, saved, { ...protocols, later }));
  useEffect(() => {
    editor.start();
    // A phone may end a page that is out of sight.
    const hidden = () => {
      if (document.visibilityState === "hidden") void editor.keepNow();
    };
    document.addEventListener("visibilitychange", hidden);
    return () => {
      document.removeEventListener("visibilitychange", hidden);
      editor.stop();
    };
  }, [editor]);
  return editor;
}

export const useEditorState = (editor: Editing): EditorState =>
  useSyncExternalStore(editor.subscribe, () => editor.now);
