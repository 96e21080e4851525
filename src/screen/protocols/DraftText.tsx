/** A field of the draft. What does not fit stays typed, with the reason beside it, and the draft stays as it was. */
import { useState } from "react";
import type { Edit } from "../../drafting/edit";
import type { FieldTrouble } from "../../drafting/fieldTrouble";
import type { Text } from "../../session/protocol";
import { Entry } from "../sums/parts/Entry";
import { useEditor } from "./useEditor";
import { useProtocolWords } from "./useProtocolWords";

interface Props {
  readonly label: string;
  readonly value: string;
  /** The edit that the text asks for, or words that say why there is none. */
  readonly editFor: (text: string) => Edit | string;
  readonly hint?: string;
  readonly type?: "text" | "date";
  readonly isNumeric?: boolean;
  readonly inputId?: string;
}

interface Typed {
  readonly text: string;
  /** Null where the draft took it over. */
  readonly words: string | null;
  /** The draft's own value then, or null until that is known: once it changes otherwise, by an undo for one, this is gone. */
  readonly of: string | null;
}

export function DraftText({ label, value, editFor, hint, type = "text", isNumeric = false, inputId }: Props) {
  const { troubles } = useProtocolWords();
  const { editor } = useEditor();
  const [typed, setTyped] = useState<Typed | null>(null);
  if (typed && typed.of === null) setTyped({ ...typed, of: value });
  const shown = typed && (typed.of === null || typed.of === value) ? typed : null;
  const change = (text: string) => {
    const edit = editFor(text);
    if (typeof edit === "string") {
      setTyped({ text, words: edit, of: value });
      return;
    }
    const trouble: FieldTrouble | null = editor.edit(edit);
    if (trouble) setTyped({ text, words: troubles[trouble.code](trouble.limit), of: value });
    // "5 m" stands as it is typed, though the draft has five minutes already.
    else setTyped({ text, words: null, of: null });
  };
  const leave = () => {
    editor.endRun();
    if (typed?.words === null) setTyped(null);
  };
  return (
    <Entry
      label={label}
      value={shown?.text ?? value}
      trouble={shown?.words}
      hint={hint}
      type={type}
      isNumeric={isNumeric}
      maxLength={300}
      inputId={inputId}
      onChange={change}
      onLeave={leave}
    />
  );
}

interface BothProps {
  readonly label: string;
  readonly value: Text | undefined;
  readonly editFor: (text: Text | undefined) => Edit;
  readonly hint?: string;
  /** It may be left out altogether. */
  readonly isOptional?: boolean;
  readonly inputId?: string;
}

/** The same words in each language. English is always there; another may be empty. */
export function BothTexts({ label, value, editFor, hint, isOptional = false, inputId }: BothProps) {
  const { english, spanish } = useProtocolWords().editor;
  const textOf = (en: string, es: string): Text | undefined => {
    if (isOptional && en === "" && es === "") return undefined;
    return es === "" ? { en } : { en, es };
  };
  const [en, es] = [value?.en ?? "", value?.es ?? ""];
  const about = hint === undefined ? {} : { hint };
  return (
    <>
      <DraftText
        label={english(label)}
        value={en}
        editFor={(text) => editFor(textOf(text, es))}
        {...about}
        {...(inputId === undefined ? {} : { inputId })}
      />
      <DraftText label={spanish(label)} value={es} editFor={(text) => editFor(textOf(en, text))} />
    </>
  );
}
