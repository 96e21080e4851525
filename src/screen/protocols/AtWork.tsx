/** What can happen while working, each with its flow; and what else could. */
import { useState } from "react";
import { type EventId, eventIds } from "../../session/protocol";
import { Select } from "../sums/parts/Entry";
import { headId } from "./ids";
import { ListPart } from "./ListPart";
import styles from "./Protocols.module.css";
import { useEditor } from "./useEditor";
import { useProtocolWords } from "./useProtocolWords";

export function AtWork() {
  const w = useProtocolWords();
  const { protocol, edit, openPart, focusOn, isReadOnly } = useEditor();
  const missing = eventIds.filter((id) => !protocol.events.some(({ event }) => event === id));
  const [chosen, setChosen] = useState<EventId | null>(null);
  const event = missing.find((id) => id === chosen) ?? missing[0];
  return (
    <section className={styles.group} aria-labelledby="at-work">
      <h3 id="at-work">{w.editor.atWork}</h3>
      <p className={styles.note}>{w.editor.atWorkHint}</p>
      {protocol.events.map((flow) => (
        <ListPart key={flow.event} place={flow.event} />
      ))}
      {!isReadOnly && event && (
        <div className={styles.acts}>
          <Select
            label={w.editor.flow.add}
            value={event}
            options={missing.map((id) => [id, w.places[id]] as const)}
            onChange={setChosen}
          />
          <button
            type="button"
            onClick={() => {
              edit({ do: "addFlow", event });
              openPart(event, true);
              focusOn(headId(event));
            }}
          >
            {w.editor.flow.add}
          </button>
        </div>
      )}
    </section>
  );
}
