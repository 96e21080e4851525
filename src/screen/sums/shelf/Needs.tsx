/** What a session of a protocol takes against what may be used today, which product stands behind an item, and orders. */

import { useState } from "react";
import type { SpokenLanguage } from "../../../announcements/languages";
import type { CivilDate } from "../../../due/calendar";
import type { Protocol } from "../../../session/protocol";
import { type Assigned, needsOf } from "../../../shelf/fromSession";
import type { Shelf } from "../../../shelf/product";
import { shelfView } from "../../../shelf/view";
import { assignedFor } from "../../../studio/studio";
import type { PrepareView } from "../../model";
import { Section } from "../../prepare/Field";
import fields from "../../prepare/Prepare.module.css";
import { useShared } from "../../useModel";
import acts from "../parts/Acts.module.css";
import { Select } from "../parts/Entry";
import { useStudio, useStudioModel } from "../useStudio";
import { useSums } from "../useSums";
import { useSumWords } from "../useSumWords";

interface Props {
  readonly view: PrepareView;
  /** With what is left of it. */
  readonly shelf: Shelf;
  readonly today: CivilDate;
}

export function Needs({ view, shelf, today }: Props) {
  const { language } = useShared();
  const sums = useSums();
  const w = useSumWords().shelf;
  const keeping = useStudioModel();
  const studio = useStudio();
  const [protocolId, setProtocol] = useState(view.draft.protocol);
  const protocol = view.protocols.find(({ id }) => id === protocolId) ?? view.protocols[0];
  if (!protocol) return null;
  const assigned = assignedFor(studio, protocol.id);
  const { needs, unassigned } = needsOf(protocol, assigned);
  const shown = shelfView(shelf, today, needs, { phrases: sums });
  const assign = (value: Assigned) =>
    void keeping.keep(w.acts.assigned, [
      { kind: "assigned", id: protocol.id, value: { items: { ...value.items }, gloves: value.gloves } },
    ]);
  return (
    <>
      <Section title={w.needs} hint={w.needsHint}>
        <div className={fields.fields}>
          <Select
            label={w.protocol}
            value={protocol.id}
            options={view.protocols.map(({ id, name }) => [id, name[language] ?? name.en] as const)}
            onChange={setProtocol}
          />
        </div>
        <ul className={acts.rows} data-testid="needs">
          {shown.needs.map(({ productId, name, needed, usable, unusable, short }) => (
            <li key={productId} data-mark={short > 0 ? "bad" : "good"}>
              <span>
                <b>{name}</b>
                <small>
                  {w.needed(needed, usable)}
                  {unusable > 0 && `, ${w.unusable(unusable)}`}
                </small>
              </span>
              <em>{short > 0 ? w.short(short) : w.enough}</em>
            </li>
          ))}
        </ul>
        {unassigned.length > 0 && (
          <p className={acts.note}>{w.unassigned(unassigned.map((id) => itemName(protocol, id, language)))}</p>
        )}
        <Assigning protocol={protocol} assigned={assigned} assign={assign} />
        <div className={acts.acts}>
          <button type="button" onClick={() => keeping.say([{ kind: "free", text: shown.spoken }])}>
            {w.sayMissing}
          </button>
        </div>
      </Section>
      <Section title={w.reorder} hint={w.reorderHint}>
        {shown.reorder.length === 0 && <p>{w.nothingToOrder}</p>}
        <ul className={acts.rows} data-testid="reorder">
          {shown.reorder.map(({ productId, name, order, usable, unit }) => (
            <li key={productId}>
              <span>
                <b>{name}</b> <small>{w.stillUsable(usable, w.product.units[unit])}</small>
              </span>
              <em>{w.order(order, w.product.units[unit])}</em>
            </li>
          ))}
        </ul>
      </Section>
    </>
  );
}

const itemName = (protocol: Protocol, id: string, language: SpokenLanguage): string => {
  const name = protocol.items.find((item) => item.id === id)?.name;
  return name?.[language] ?? name?.en ?? id;
};

interface AssigningProps {
  readonly protocol: Protocol;
  readonly assigned: Assigned;
  readonly assign: (value: Assigned) => void;
}

function Assigning({ protocol, assigned, assign }: AssigningProps) {
  const { language } = useShared();
  const w = useSumWords().shelf;
  const pieces = [...useStudio().product.values()].filter(({ unit }) => unit === "piece");
  if (pieces.length === 0) return <p className={acts.note}>{w.nothingByThePiece}</p>;
  const options = [["", w.notCounted], ...pieces.map(({ id, name }) => [id, name] as const)] as const;
  const setItem = (item: string, productId: string) => {
    const others = Object.fromEntries(Object.entries(assigned.items).filter(([id]) => id !== item));
    assign({ ...assigned, items: productId === "" ? others : { ...others, [item]: productId } });
  };
  return (
    <details className={acts.more}>
      <summary>{w.assign}</summary>
      <div className={fields.fields}>
        <Select
          label={w.gloves}
          hint={w.glovesHint}
          value={assigned.gloves ?? ""}
          options={options}
          onChange={(id) => assign({ ...assigned, gloves: id === "" ? null : id })}
        />
        {protocol.items
          .filter(({ use }) => use === "singleUse")
          .map(({ id, name }) => (
            <Select
              key={id}
              label={name[language] ?? name.en}
              value={assigned.items[id] ?? ""}
              options={options}
              onChange={(productId) => setItem(id, productId)}
            />
          ))}
      </div>
    </details>
  );
}
