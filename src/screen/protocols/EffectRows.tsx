/** What a step does: verbs and items chosen from closed lists, in the order in which they happen. */
import { effectOn, effectWith, isHandVerb, productsOn, verbs } from "../../drafting/editEffects";
import { type Effect, type Step, WasteStream } from "../../session/protocol";
import { Tick } from "../prepare/Field";
import { Select } from "../sums/parts/Entry";
import styles from "./Protocols.module.css";
import { useEditor } from "./useEditor";
import { useProtocolWords } from "./useProtocolWords";
import { useText } from "./useText";

export function EffectRows({ step }: { step: Step }) {
  const w = useProtocolWords();
  const text = useText();
  const e = w.editor;
  const { protocol, edit, isReadOnly } = useEditor();
  const { effects } = step;
  const usable = verbs.filter((verb) => effectWith(verb, null, protocol) !== null);
  const add = () => {
    const effect = effectWith("touch", effects.findLast((one) => "item" in one) ?? null, protocol);
    if (effect) edit({ do: "addEffect", step: step.id, effect });
  };
  return (
    <fieldset className={styles.effects}>
      <legend>{e.effects}</legend>
      <p className={styles.note}>{e.effectsHint}</p>
      <ol data-testid={`effects-${step.id}`}>
        {effects.map((effect, at) => {
          const set = (next: Effect | null) => {
            if (next) edit({ do: "setEffect", step: step.id, at, effect: next });
          };
          const name = e.effectName(at + 1);
          const move = (to: number) => {
            if (to >= 0 && to < effects.length) edit({ do: "moveEffect", step: step.id, at, to });
          };
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: an effect is known by its place
            <li key={at}>
              <div className={styles.fields}>
                <Select
                  label={e.verb(at + 1)}
                  value={effect.verb}
                  options={usable.map((verb) => [verb, w.verbs[verb]] as const)}
                  onChange={(verb) => set(effectWith(verb, effect, protocol))}
                />
                {"item" in effect && !isHandVerb(effect.verb) && (
                  <Select
                    label={e.item(at + 1)}
                    value={effect.item}
                    options={protocol.items.map(({ id, name: shown }) => [id, text(shown)] as const)}
                    onChange={(item) => set(effectOn(item, effect, protocol))}
                  />
                )}
                {effect.verb === "apply" && (
                  <Select
                    label={e.product(at + 1)}
                    value={effect.product}
                    options={productsOn(protocol, effect.item).map(({ id, label }) => [id, text(label.name)] as const)}
                    onChange={(product) => set({ ...effect, product })}
                  />
                )}
                {effect.verb === "discard" && (
                  <>
                    <Select
                      label={e.stream(at + 1)}
                      value={effect.into}
                      options={WasteStream.options.map((into) => [into, w.streams[into]] as const)}
                      onChange={(into) => set({ ...effect, into })}
                    />
                    <Tick label={e.all} checked={effect.all} onChange={(all) => set({ ...effect, all })} />
                  </>
                )}
              </div>
              {!isReadOnly && (
                <div className={styles.acts}>
                  <button type="button" aria-label={e.upOf(name)} aria-disabled={at === 0} onClick={() => move(at - 1)}>
                    {e.up}
                  </button>
                  <button
                    type="button"
                    aria-label={e.downOf(name)}
                    aria-disabled={at === effects.length - 1}
                    onClick={() => move(at + 1)}
                  >
                    {e.down}
                  </button>
                  <button
                    type="button"
                    aria-label={e.removeOf(name)}
                    onClick={() => edit({ do: "removeEffect", step: step.id, at })}
                  >
                    {e.remove}
                  </button>
                </div>
              )}
            </li>
          );
        })}
      </ol>
      {!isReadOnly && (
        <div className={styles.acts}>
          <button type="button" onClick={add}>
            {e.addEffect}
          </button>
        </div>
      )}
    </fieldset>
  );
}
