/** The protocols that come with the companion. A studio copies one and edits it. */
import type { Protocol } from "../protocol";
import { autoclavedTubes } from "./autoclavedTubes";
import { cartridgeMachine } from "./cartridge";
import { conventionBooth } from "./conventionBooth";

export const bundledProtocols: readonly Protocol[] = [cartridgeMachine, autoclavedTubes, conventionBooth];

export const protocolById = (id: string): Protocol | undefined => bundledProtocols.find((p) => p.id === id);
