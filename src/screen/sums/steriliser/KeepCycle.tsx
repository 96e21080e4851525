/** A judged cycle on its way into the log: which machine, what was in it, who ran it, what its indicators showed. */
import { useState } from "react";
import { parseInstant } from "../../../due/zone";
import { entryVerdict } from "../../../steriliser/logEntry";
import type { CycleView } from "../../../steriliser/view";
import type { Of } from "../../../studio/kinds";
import { nextNumber } from "../../../studio/studio";
import { wordsIn } from "../../../sums/answer";
import fields from "../../prepare/Prepare.module.css";
import acts from "../parts/Acts.module.css";
import { Entry, Select } from "../parts/Entry";
import { useStudio, useStudioModel } from "../useStudio";
import { useSums } from "../useSums";
import { useSumWords } from "../useSumWords";
import type { CycleDraft } from "./cycleDraft";

interface Props {
  readonly found: CycleView;
  readonly draft: CycleDraft;
  readonly zone: string;
  readonly kept: () => void;
}

type Entered = Of<"cycle">["entry"];
const integrators = ["passed", "failed", "none"] as const;
const biologicals = ["none", "awaited", "negative", "positive"] as const;

export function KeepCycle({ found, draft, zone, kept }: Props) {
  const sums = useSums();
  const w = useSumWords().steriliser;
  const keeping = useStudioModel();
  const studio = useStudio();
  const machines = [...studio.steriliser.values()];
  const [chosen, setChosen] = useState("");
  const [contents, setContents] = useState("");
  const [operator, setOperator] = useState("");
  const [at, setAt] = useState("");
  const [integrator, setIntegrator] = useState<Entered["integrator"]>("none");
  const [biological, setBiological] = useState<Entered["biological"]>("none");
  const [trouble, setTrouble] = useState<string | null>(null);
  const steriliserId = studio.steriliser.has(chosen) ? chosen : (machines[0]?.id ?? "");

  const keep = async () => {
    if (contents.trim() === "" || operator.trim() === "") return setTrouble(w.whoAndWhat);
    const began = at === "" ? { ok: true as const, value: Date.now() } : parseInstant(at, zone);
    if (!began.ok) return setTrouble(wordsIn(began, sums));
    const cycleId = nextNumber("C", studio.cycle.keys());
    const { cycleClass, load, stated } = draft;
    const entry: Entered = {
      ...{ cycleId, steriliserId, atMs: began.value, cycleClass, load: [...load] },
      ...{ contents: contents.trim(), operator: operator.trim(), verdict: entryVerdict(found.verdict) },
      ...{ integrator, biological, afterPositive: "" },
    };
    const value = { entry, statedByMaker: [...stated] };
    const refused = await keeping.keep(w.logged(cycleId), [{ kind: "cycle", id: cycleId, value }]);
    setTrouble(refused);
    if (refused === null) kept();
  };

  if (machines.length === 0) return <p className={acts.note}>{w.addOneFirst}</p>;
  return (
    <>
      <div className={fields.fields}>
        <Select
          label={w.which}
          value={steriliserId}
          options={machines.map(({ id, name }) => [id, name] as const)}
          onChange={setChosen}
        />
        <Entry label={w.contents} maxLength={200} value={contents} onChange={setContents} />
        <Entry label={w.operator} maxLength={8} value={operator} onChange={setOperator} />
        <Entry type="datetime-local" label={w.at} hint={w.atHint} value={at} onChange={setAt} />
        <Select
          label={w.integrator}
          value={integrator}
          options={integrators.map((one) => [one, w.integrators[one]] as const)}
          onChange={setIntegrator}
        />
        <Select
          label={w.biological}
          value={biological}
          options={biologicals.map((one) => [one, w.biologicals[one]] as const)}
          onChange={setBiological}
        />
      </div>
      <div role="alert">{trouble}</div>
      <div className={acts.acts}>
        <button type="button" className={acts.main} onClick={keep}>
          {w.intoLog}
        </button>
      </div>
    </>
  );
}
