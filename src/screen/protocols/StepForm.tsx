/** A step's fields: its words in each language, what kind it is, what it does, where it stands. */
import { isList, type Place, placesOf, stepsAt } from "../../drafting/place";
import type { Step } from "../../session/protocol";
import { Tick } from "../prepare/Field";
import { Select } from "../sums/parts/Entry";
import { BothTexts, DraftText } from "./DraftText";
import { EffectRows } from "./EffectRows";
import { fieldId, titleId } from "./ids";
import styles from "./Protocols.module.css";
import { useEditor } from "./useEditor";
import { useProtocolWords } from "./useProtocolWords";
import { useText } from "./useText";

const kinds = ["do", "check", "count"] as const;

export function StepForm({ step, place, at }: { step: Step; place: Place; at: number }) {
  const w = useProtocolWords();
  const text = useText();
  const f = w.editor.step;
  const { protocol, protocols, edit, setOpenStep, openPart, focusOn, isReadOnly } = useEditor();
  const change = (part: Parameters<typeof changeOf>[1]) => edit(changeOf(step.id, part));
  const others = stepsAt(protocol, place).filter(({ id }) => id !== step.id);
  const before = at === 0 ? "" : (others[at - 1]?.id ?? "");
  const moveTo = (to: Place, index: number) => {
    edit({ do: "moveStep", step: step.id, place: to, at: index });
    openPart(to, true);
    focusOn(titleId(step.id));
  };
  const rename = (id: string) => {
    const made = changeOf(step.id, { id });
    // The form stays open under its new id; a refused one changes nothing.
    if (/^[a-z][A-Za-z0-9]{0,39}$/.test(id)) setOpenStep(id);
    return made;
  };
  return (
    <div className={styles.form} data-testid={`form-${step.id}`}>
      <p className={styles.note} data-testid="heard-as">
        {w.heard[protocols.heardAs(step)]}
      </p>
      <fieldset disabled={isReadOnly} className={styles.bare}>
        <legend className={styles.hiddenWords}>{text(step.show)}</legend>
        <div className={styles.fields}>
          <BothTexts
            label={f.show}
            hint={f.showHint}
            value={step.show}
            inputId={fieldId(step.id)}
            editFor={(show) => changeOf(step.id, { show })}
          />
          <BothTexts label={f.say} hint={f.sayHint} value={step.say} editFor={(say) => changeOf(step.id, { say })} />
          <BothTexts
            isOptional
            label={f.caution}
            hint={f.cautionHint}
            value={step.caution}
            editFor={(caution) => changeOf(step.id, { caution })}
          />
          <Select
            label={f.kind}
            value={step.kind}
            options={kinds.map((kind) => [kind, w.kinds[kind]] as const)}
            onChange={(kind) => change({ kind })}
          />
          <DraftText
            isNumeric
            label={f.seconds}
            hint={f.secondsHint}
            value={String(step.handsOnSec)}
            editFor={(text) => changeOf(step.id, { handsOnSec: numberIn(text) })}
          />
        </div>
        <Tick
          label={f.skippable}
          hint={f.skippableHint}
          checked={step.skippable}
          onChange={(skippable) => change({ skippable })}
        />
        <Tick
          label={f.atWork}
          checked={step.atWork === true}
          onChange={(isAtWork) => change({ atWork: isAtWork ? true : undefined })}
        />
        {!isList(place) && (
          <Tick
            label={f.beforeBreakdown}
            checked={step.beforeBreakdown === true}
            onChange={(isBefore) => change({ beforeBreakdown: isBefore ? true : undefined })}
          />
        )}
        <EffectRows step={step} />
        <details className={styles.more}>
          <summary>{f.more}</summary>
          <div className={styles.fields}>
            <Select
              label={f.place}
              value={place}
              options={placesOf(protocol).map((one) => [one, w.places[one]] as const)}
              onChange={(to) => to !== place && moveTo(to, stepsAt(protocol, to).length)}
            />
            <Select
              label={f.after}
              value={before}
              options={[["", f.first] as const, ...others.map(({ id, show }) => [id, text(show)] as const)]}
              onChange={(after) => moveTo(place, others.findIndex(({ id }) => id === after) + 1)}
            />
            <DraftText label={f.id} hint={f.idHint} value={step.id} editFor={rename} />
          </div>
        </details>
      </fieldset>
    </div>
  );
}

type Fields = Extract<Parameters<ReturnType<typeof useEditor>["edit"]>[0], { do: "changeStep" }>["part"];

const changeOf = (step: string, part: Fields) => ({ do: "changeStep", step, part }) as const;

/** What is no number is refused by the schema, with the field named. */
const numberIn = (text: string): number => (/^\s*-?\d+(\.\d+)?\s*$/.test(text) ? Number(text) : 0.5);
