/** The bottle's label, printed and spoken, and the way onto the shelf: from there the mix is a product of a session. */
import { useState } from "react";
import { type CivilDate, compareDates, parseDate } from "../../../due/calendar";
import { dateAt, showWall } from "../../../due/zone";
import { mixedProduct } from "../../../mixing/mixedProduct";
import type { MixView } from "../../../mixing/view";
import { Product } from "../../../shelf/product";
import { labelForMix } from "../../../shelf/sessionLabel";
import type { Of } from "../../../studio/kinds";
import { nextNumber } from "../../../studio/studio";
import fields from "../../prepare/Prepare.module.css";
import styles from "../parts/Acts.module.css";
import { Entry } from "../parts/Entry";
import { LabelSheet } from "../parts/LabelSheet";
import { readSeconds, showSeconds } from "../parts/seconds";
import { useStudio, useStudioModel } from "../useStudio";
import { useSumWords } from "../useSumWords";
import type { MixTyped } from "./Mixing";

interface Props {
  readonly mix: MixView;
  readonly typed: MixTyped;
  readonly from: Product | undefined;
  readonly zone: string;
}

export function MixResult({ mix, typed, from, zone }: Props) {
  const w = useSumWords().mixing;
  const keeping = useStudioModel();
  const studio = useStudio();
  const first = from?.label?.contactTimes[0]?.contactS;
  const [contact, setContact] = useState<string | null>(null);
  const [told, setTold] = useState<string | null>(null);
  const text = contact ?? (first === undefined ? "" : showSeconds(first));
  const seconds = readSeconds(text);
  const isRight = seconds !== null && seconds >= 1 && seconds <= 3600;

  const put = async () => {
    if (!isRight) return setTold(w.contactNeeded);
    const name = typed.name.trim() || w.unnamed;
    const madeFrom = from ?? standIn(name, seconds);
    const id = nextNumber("M", studio.mix.keys());
    const { resulting } = mix.measured;
    const product = mixedProduct({ id, name, resulting, useBy: mix.useBy, fromItemId: madeFrom.id, contactS: seconds });
    const value: Of<"mix"> = { product, madeFrom, printed: [...mix.label.printed], spoken: mix.label.spoken };
    const trouble = await keeping.keep(w.onShelfAct(name), [{ kind: "mix", id, value }]);
    setTold(trouble ?? sayOffered(value));
  };
  const sayOffered = (value: Of<"mix">): string => {
    const until = showWall(value.product.useByMs, zone);
    const label = labelForMix(value.product, value.madeFrom, zone);
    const last = label.ok && label.value.expiry !== null ? parseDate(label.value.expiry) : null;
    const isOffered = last?.ok && !isBefore(last.value, dateAt(Date.now(), zone));
    return isOffered ? w.onShelf(until) : w.tooShortLived(until);
  };

  return (
    <>
      <LabelSheet title={w.bottle} printed={mix.label.printed} spoken={mix.label.spoken} />
      <div className={fields.fields}>
        <Entry label={w.contact} hint={w.contactHint} value={text} onChange={setContact} />
      </div>
      <div className={styles.acts}>
        <button type="button" onClick={put}>
          {w.putOnShelf}
        </button>
      </div>
      <p role="status">{told}</p>
    </>
  );
}

const isBefore = (a: CivilDate, b: CivilDate): boolean => compareDates(a, b) < 0;

/** A stock that is not on the shelf: nothing is known of its label, so nothing is taken from it. */
const standIn = (name: string, contactS: number): Product =>
  Product.parse({
    ...{ id: "not-on-shelf", name, kind: "disinfectant", unit: "mL", orderBelow: 0, orderTo: 0 },
    label: {
      contactTimes: [{ use: "surfaces", contactS }],
      ...{ reapplyWithinS: null, cleanFirst: true, rinseAfter: false, daysAfterOpening: null, hoursDiluted: null },
      known: "artist",
    },
  });
