/** What an event says beside its steps: the items that are named when it is reported, and where work goes on. */
import type { EventId } from "../../session/protocol";
import { Select } from "../sums/parts/Entry";
import styles from "./Protocols.module.css";
import { useEditor } from "./useEditor";
import { useProtocolWords } from "./useProtocolWords";
import { useText } from "./useText";

export function FlowFields({ event }: { event: EventId }) {
  const w = useProtocolWords();
  const text = useText();
  const f = w.editor.flow;
  const { protocol, edit, isReadOnly } = useEditor();
  const flow = protocol.events.find((one) => one.event === event);
  if (!flow) return null;
  const { asksItem, onwards } = flow;
  const setAsks = (asks: readonly string[]) => edit({ do: "changeFlow", event, part: { asksItem: [...asks] } });
  const nameOf = (id: string) => {
    const item = protocol.items.find((one) => one.id === id);
    return item ? text(item.calledAs) : id;
  };
  const others = protocol.items.filter(({ id }) => !asksItem.includes(id));
  const swapped = (at: number) =>
    asksItem.map((id, place) =>
      place === at - 1 ? (asksItem[at] ?? id) : place === at ? (asksItem[at - 1] ?? id) : id,
    );
  return (
    <fieldset className={styles.form} disabled={isReadOnly}>
      <legend>{f.asks}</legend>
      <p className={styles.note}>{f.asksHint}</p>
      {asksItem.length > 0 && (
        <ol className={styles.asks}>
          {asksItem.map((id, at) => (
            <li key={id}>
              <span>{nameOf(id)}</span>
              {!isReadOnly && (
                <span className={styles.acts}>
                  <button
                    type="button"
                    aria-label={w.editor.upOf(nameOf(id))}
                    aria-disabled={at === 0}
                    onClick={() => at > 0 && setAsks(swapped(at))}
                  >
                    {w.editor.up}
                  </button>
                  <button
                    type="button"
                    aria-label={w.editor.removeOf(nameOf(id))}
                    onClick={() => setAsks(asksItem.filter((one) => one !== id))}
                  >
                    {w.editor.remove}
                  </button>
                </span>
              )}
            </li>
          ))}
        </ol>
      )}
      <div className={styles.fields}>
        <Select
          label={f.ask}
          value=""
          options={[["", f.choose] as const, ...others.map(({ id, name }) => [id, text(name)] as const)]}
          onChange={(id) => id !== "" && setAsks([...asksItem, id])}
        />
        <Select
          label={f.onwards}
          value={onwards}
          options={[
            ["continue", f.continue],
            ["dressing", f.dressing],
          ]}
          onChange={(next) => edit({ do: "changeFlow", event, part: { onwards: next } })}
        />
      </div>
      {!isReadOnly && (
        <div className={styles.acts}>
          <button type="button" onClick={() => edit({ do: "removeFlow", event })}>
            {f.remove(w.places[event])}
          </button>
        </div>
      )}
    </fieldset>
  );
}
