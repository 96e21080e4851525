/** What was mixed and until when it may be used, to the hour. */
import { showWall } from "../../../due/zone";
import { mixUsable } from "../../../mixing/useBy";
import { Section } from "../../prepare/Field";
import acts from "../parts/Acts.module.css";
import { LabelSheet } from "../parts/LabelSheet";
import { useNowMs, useStudio, useStudioModel } from "../useStudio";
import { useSumWords } from "../useSumWords";

export function Mixes({ zone }: { zone: string }) {
  const w = useSumWords().shelf;
  const keeping = useStudioModel();
  const studio = useStudio();
  const nowMs = useNowMs();
  const mixes = [...studio.mix.entries()];
  return (
    <Section title={w.mixes} hint={w.mixesHint}>
      {mixes.length === 0 && <p>{w.noMixes}</p>}
      <ul className={acts.rows} data-testid="mixes">
        {mixes.map(([id, { product, printed, spoken }]) => {
          const state = mixUsable(product, nowMs);
          return (
            <li key={id} data-mark={state === "usable" ? "good" : "bad"}>
              <span>
                <b>{product.name}</b>
                <small>
                  {w.mixStates[state]}: {showWall(product.useByMs, zone)}
                </small>
              </span>
              <span className={acts.acts}>
                <button
                  type="button"
                  aria-label={w.removeOf(product.name)}
                  onClick={() => void keeping.keep(w.acts.removed(product.name), [{ kind: "mix", id, value: null }])}
                >
                  {w.remove}
                </button>
              </span>
              <details className={`${acts.whole} ${acts.more}`}>
                <summary>{w.labelOf(product.name)}</summary>
                <LabelSheet title={product.name} printed={printed} spoken={spoken} />
              </details>
            </li>
          );
        })}
      </ul>
    </Section>
  );
}
