/** All findings in one place, each with the way to the step that asks for it. */
import type { DraftFinding } from "../../drafting/findings";
import { findStep, type Place } from "../../drafting/place";
import { FindingNote } from "./FindingNote";
import { headId, titleId } from "./ids";
import styles from "./Protocols.module.css";
import { useEditor } from "./useEditor";
import { useProtocolWords } from "./useProtocolWords";
import { useText } from "./useText";

export function Found() {
  const w = useProtocolWords();
  const text = useText();
  const c = w.editor.check;
  const { state, protocol, openPart, setOpenStep, focusOn } = useEditor();
  const { steps, events, elsewhere, count } = state.findings;
  if (count === 0) return null;
  const showStep = (id: string) => {
    const found = findStep(protocol, id);
    if (!found) return;
    openPart(found.place, true);
    setOpenStep(id);
    focusOn(titleId(id));
  };
  const showPlace = (place: Place) => {
    openPart(place, true);
    focusOn(headId(place));
  };
  return (
    <section className={styles.found} aria-label={c.findings} data-testid="findings">
      <h3>{c.findings}</h3>
      <p className={styles.note}>{state.check.at === "done" ? c.findingsHint : c.again}</p>
      <ul>
        {[...steps].flatMap(([id, found]) => {
          const step = findStep(protocol, id);
          return found.map((finding) => (
            <Row
              key={keyOf(finding)}
              finding={finding}
              name={step ? text(step.step.show) : id}
              go={c.go}
              show={() => showStep(id)}
            />
          ));
        })}
        {[...events].flatMap(([event, found]) =>
          found.map((finding) => (
            <Row
              key={keyOf(finding)}
              finding={finding}
              name={w.places[event]}
              go={c.goEvent}
              show={() => showPlace(event)}
            />
          )),
        )}
        {elsewhere.map((finding) => (
          <Row key={keyOf(finding)} finding={finding} name={c.close} go={null} show={() => undefined} />
        ))}
      </ul>
    </section>
  );
}

const keyOf = ({ breach: { rule, step, events } }: DraftFinding): string => `${rule} ${step} ${events.length}`;

interface RowProps {
  readonly finding: DraftFinding;
  readonly name: string;
  readonly go: string | null;
  readonly show: () => void;
}

function Row({ finding, name, go, show }: RowProps) {
  return (
    <li>
      <h4>{name}</h4>
      <FindingNote finding={finding} />
      {go !== null && (
        <button type="button" aria-label={`${go}: ${name}`} onClick={show}>
          {go}
        </button>
      )}
    </li>
  );
}
