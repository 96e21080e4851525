/**
 * What a protocol will take from the shelf, and what a record says was taken. Which product stands behind an item is
 * the studio's own choice; what it has not assigned is not counted, and is named.
 */
import type { CivilDate } from "../due/calendar";
import type { SessionFact } from "../session/fact";
import { everyStep, listNames, type Protocol, type Step } from "../session/protocol";
import type { Consumption, Need } from "./count";
import type { Shelf } from "./product";

export type Assigned = {
  /** Item of the protocol → product on the shelf, by the piece. */
  readonly items: Readonly<Record<string, string>>;
  /** Two gloves for each donning; null where gloves are not counted. */
  readonly gloves: string | null;
};

export type SessionNeeds = {
  readonly needs: readonly Need[];
  /** Single-use items of the protocol that no product is assigned to. */
  readonly unassigned: readonly string[];
};

/** One session walked straight through: single-use items, one for each opening and at least one, and the gloves. */
export function needsOf(protocol: Protocol, assigned: Assigned): SessionNeeds {
  const walked = listNames.filter((list) => list !== "resuming").flatMap((list) => protocol[list]);
  const singleUse = protocol.items.filter((item) => item.use === "singleUse");
  const needs = singleUse.flatMap((item): Need[] => {
    const productId = own(assigned.items, item.id);
    return productId === undefined ? [] : [{ productId, quantity: Math.max(1, opened(walked, item.id)) }];
  });
  const donned = walked.flatMap((step) => step.effects).filter((effect) => effect.verb === "don").length;
  return {
    needs:
      assigned.gloves === null || donned === 0
        ? needs
        : [...needs, { productId: assigned.gloves, quantity: 2 * donned }],
    unassigned: singleUse.filter((item) => own(assigned.items, item.id) === undefined).map((item) => item.id),
  };
}

/** Consumption counted from the facts of one session: each opening and donning of a step done and not taken back. */
export function usesOf(
  record: { readonly protocol: Protocol; readonly facts: readonly SessionFact[]; readonly on: CivilDate },
  assigned: Assigned,
  shelf: Shelf,
): readonly Consumption[] {
  const steps = new Map(everyStep(record.protocol).map(({ step }) => [step.id, step]));
  const lots = new Map(
    record.facts.flatMap((fact) => (fact.type === "v1.LotGiven" ? [[fact.item, fact.lot] as const] : [])),
  );
  const singleUse = new Set(record.protocol.items.filter((item) => item.use === "singleUse").map((item) => item.id));
  return kept(record.facts).flatMap((fact): Consumption[] => {
    if (fact.type !== "v1.StepDone") return [];
    return (steps.get(fact.step)?.effects ?? []).flatMap((effect): Consumption[] => {
      if (effect.verb === "don" && assigned.gloves !== null)
        return [{ productId: assigned.gloves, stockId: null, quantity: 2, on: record.on }];
      const productId =
        effect.verb === "open" && singleUse.has(effect.item) ? own(assigned.items, effect.item) : undefined;
      if (productId === undefined || effect.verb !== "open") return [];
      const lot = lots.get(effect.item);
      const line = shelf.stock.find(
        (stock) => stock.productId === productId && stock.lot !== null && stock.lot === lot,
      );
      return [{ productId, stockId: line?.id ?? null, quantity: 1, on: record.on }];
    });
  });
}

/** A fact taken back by voice was said by mistake: it took nothing from the shelf. */
function kept(facts: readonly SessionFact[]): readonly SessionFact[] {
  const undone = new Set(facts.flatMap((fact) => (fact.type === "v1.Undone" ? [fact.fromCause] : [])));
  return facts.filter((fact) => !undone.has(fact.cause));
}

function opened(steps: readonly Step[], item: string): number {
  return steps.flatMap((step) => step.effects).filter((effect) => effect.verb === "open" && effect.item === item)
    .length;
}

function own(table: Readonly<Record<string, string>>, key: string): string | undefined {
  return Object.hasOwn(table, key) ? table[key] : undefined;
}
