/**
 * One change to a protocol that is being drafted. What comes back is a protocol that every reader takes, or the field
 * that kept the change from being made; nothing in between. Pure, and the protocol handed in stays as it is.
 */
import type { Effect, EventFlow, EventId, Item, Label, ProductSlot, Protocol, Step } from "../session/protocol";
import { type EffectEdit, editEffect } from "./editEffects";
import { editSteps, type StepEdit } from "./editSteps";
import { editThings, type ThingEdit } from "./editThings";
import { notThere, type Sound, soundProtocol } from "./fieldTrouble";

export type Part<T> = { readonly [K in keyof T]?: T[K] | undefined };

export type ProtocolEdit =
  | { readonly do: "changeProtocol"; readonly part: Part<Pick<Protocol, "name" | "about">> }
  | { readonly do: "addFlow"; readonly event: EventId }
  | { readonly do: "removeFlow"; readonly event: EventId }
  | {
      readonly do: "changeFlow";
      readonly event: EventId;
      readonly part: Part<Pick<EventFlow, "asksItem" | "onwards">>;
    };

export type Edit = ProtocolEdit | StepEdit | EffectEdit | ThingEdit;
export type Act = Edit["do"];
export type { Effect, Item, Label, ProductSlot, Step };

/** @returns the protocol with the change in it, or why there is none. Never throws. */
export function applyEdit(protocol: Protocol, edit: Edit): Sound {
  const changed = changedBy(protocol, edit);
  return typeof changed === "string" ? notThere(changed) : soundProtocol(tidy(changed));
}

/** @returns the path of what is not there, as text. */
function changedBy(protocol: Protocol, edit: Edit): Protocol | string {
  switch (edit.do) {
    case "changeProtocol":
      return { ...protocol, ...edit.part } as Protocol;
    case "addFlow": {
      const flow: EventFlow = { event: edit.event, asksItem: [], steps: [], onwards: "continue" };
      return { ...protocol, events: [...protocol.events, flow] };
    }
    case "removeFlow": {
      const events = protocol.events.filter(({ event }) => event !== edit.event);
      return events.length === protocol.events.length ? "$.events" : { ...protocol, events };
    }
    case "changeFlow": {
      if (!protocol.events.some(({ event }) => event === edit.event)) return "$.events";
      const events = protocol.events.map((flow) => (flow.event === edit.event ? { ...flow, ...edit.part } : flow));
      return { ...protocol, events: events as EventFlow[] };
    }
    case "addStep":
    case "removeStep":
    case "moveStep":
    case "changeStep":
      return editSteps(protocol, edit);
    case "addEffect":
    case "setEffect":
    case "moveEffect":
    case "removeEffect":
      return editEffect(protocol, edit);
    default:
      return editThings(protocol, edit);
  }
}

/** A field that was emptied is left out, as in a file: no caution, no Spanish. */
const tidy = (protocol: Protocol): unknown => JSON.parse(JSON.stringify(protocol));

/** Edits of the same field one after another are one act of typing: one undo takes back all of it. */
export function runOf(edit: Edit): string | null {
  switch (edit.do) {
    case "changeStep":
      return `step ${edit.step} ${fieldsOf(edit.part)}`;
    case "changeItem":
      return `item ${edit.item} ${fieldsOf(edit.part)}`;
    case "changeProduct":
      return `product ${edit.product} ${fieldsOf(edit.part)}`;
    case "changeLabel":
      return `label ${edit.product} ${fieldsOf(edit.part)}`;
    case "changeProtocol":
      return `protocol ${fieldsOf(edit.part)}`;
    default:
      return null;
  }
}

const fieldsOf = (part: object): string => Object.keys(part).join();
