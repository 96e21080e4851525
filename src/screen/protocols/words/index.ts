/** The words of the protocol pages. Another language has the same shape, or does not compile. */
import type { protocolsEn } from "./en";

export type ProtocolWords = typeof protocolsEn;
