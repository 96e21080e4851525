/** One list of steps: a walked list, or the flow of an event, with what else the event says. */
import { newStep } from "../../drafting/fresh";
import { isList, type Place, stepsAt } from "../../drafting/place";
import { FindingNote } from "./FindingNote";
import { FlowFields } from "./FlowFields";
import { fieldId } from "./ids";
import { Part } from "./Part";
import styles from "./Protocols.module.css";
import { StepRow } from "./StepRow";
import { useEditor } from "./useEditor";
import { useProtocolWords } from "./useProtocolWords";

export function ListPart({ place }: { place: Place }) {
  const w = useProtocolWords();
  const { protocol, state, edit, setOpenStep, focusOn, isReadOnly } = useEditor();
  const steps = stepsAt(protocol, place);
  const ofEvent = isList(place) ? [] : (state.findings.events.get(place) ?? []);
  const found = steps.reduce((sum, { id }) => sum + (state.findings.steps.get(id)?.length ?? 0), ofEvent.length);
  const add = () => {
    const step = newStep(protocol, w.editor.newStep);
    edit({ do: "addStep", place, at: steps.length, step });
    setOpenStep(step.id);
    focusOn(fieldId(step.id));
  };
  return (
    <Part
      id={place}
      title={w.places[place]}
      about={w.editor.steps(steps.length)}
      found={found}
      level={isList(place) ? "h3" : "h4"}
    >
      {ofEvent.map((finding) => (
        <FindingNote key={finding.breach.rule} finding={finding} />
      ))}
      {!isList(place) && <FlowFields event={place} />}
      <ol className={styles.steps} data-testid={`steps-${place}`}>
        {steps.map((step, at) => (
          <StepRow key={step.id} step={step} place={place} at={at} of={steps.length} />
        ))}
      </ol>
      {!isReadOnly && (
        <div className={styles.acts}>
          <button type="button" aria-label={w.editor.addStepTo(w.places[place])} onClick={add}>
            {w.editor.addStep}
          </button>
          {steps.length > 1 && <p className={styles.note}>{w.editor.keys}</p>}
        </div>
      )}
    </Part>
  );
}
