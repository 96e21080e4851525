/** The protocols that come with the companion. A studio copies one and edits it. */
import type { Protocol } from "../protocol";
import { cartridgeMachine } from "./cartridge";

export const bundledProtocols: readonly Protocol[] = [cartridgeMachine];

export const protocolById = (id: string): Protocol | undefined => bundledProtocols.find((p) => p.id === id);
