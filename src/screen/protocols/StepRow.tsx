/** A step in its list: what it shows and touches, up, down, hear, delete; what was found; and its form when it is open. */
import type { KeyboardEvent } from "react";
import { type Place, stepsAt } from "../../drafting/place";
import type { Step } from "../../session/protocol";
import { effectWords } from "./effectWords";
import { FindingNote } from "./FindingNote";
import { headId, titleId } from "./ids";
import styles from "./Protocols.module.css";
import { StepForm } from "./StepForm";
import { useEditor } from "./useEditor";
import { useProtocolWords } from "./useProtocolWords";
import { useText } from "./useText";

interface Props {
  readonly step: Step;
  readonly place: Place;
  readonly at: number;
  readonly of: number;
}

export function StepRow({ step, place, at, of }: Props) {
  const w = useProtocolWords();
  const text = useText();
  const e = w.editor;
  const { protocol, protocols, state, edit, openStep, setOpenStep, focusOn, isReadOnly } = useEditor();
  const name = text(step.show);
  const found = state.findings.steps.get(step.id) ?? [];
  const isOpen = openStep === step.id;
  const move = (by: number) => {
    const to = at + by;
    if (!isReadOnly && to >= 0 && to < of) edit({ do: "moveStep", step: step.id, place, at: to });
  };
  const remove = () => {
    const next = stepsAt(protocol, place)[at + 1] ?? stepsAt(protocol, place)[at - 1];
    edit({ do: "removeStep", step: step.id });
    focusOn(next ? titleId(next.id) : headId(place));
  };
  const keys = (pressed: KeyboardEvent) => {
    if (!pressed.altKey || (pressed.key !== "ArrowUp" && pressed.key !== "ArrowDown")) return;
    pressed.preventDefault();
    move(pressed.key === "ArrowUp" ? -1 : 1);
  };
  return (
    <li className={styles.step} data-step={step.id} data-found={found.length > 0} onKeyDown={keys}>
      <div className={styles.row}>
        <button
          type="button"
          id={titleId(step.id)}
          className={styles.title}
          aria-expanded={isOpen}
          onClick={() => setOpenStep(isOpen ? null : step.id)}
        >
          <small>{e.number(at + 1, of)}</small>
          <b>{name}</b>
          <small>{step.effects.length === 0 ? e.noEffects : effectWords(w, protocol, step.effects, text)}</small>
        </button>
        <span className={styles.acts}>
          {!isReadOnly && (
            <>
              <button type="button" aria-label={e.upOf(name)} aria-disabled={at === 0} onClick={() => move(-1)}>
                {e.up}
              </button>
              <button type="button" aria-label={e.downOf(name)} aria-disabled={at === of - 1} onClick={() => move(1)}>
                {e.down}
              </button>
            </>
          )}
          <button type="button" aria-label={e.previewOf(name)} onClick={() => protocols.preview(step)}>
            {e.preview}
          </button>
          {!isReadOnly && (
            <button type="button" aria-label={e.removeOf(name)} onClick={remove}>
              {e.remove}
            </button>
          )}
        </span>
      </div>
      {found.map((finding) => (
        <FindingNote key={finding.breach.rule} finding={finding} />
      ))}
      {isOpen && <StepForm step={step} place={place} at={at} />}
    </li>
  );
}
