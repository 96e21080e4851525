/** The log: facts made into a signed chain and kept before anything is shown or said. */
export { canonicalText, Digest, digestOf } from "./canonical";
export { headOf, headOfHeader, signedMessage } from "./chain";
export { deviceSigner } from "./deviceKey";
export { watchLosses } from "./deviceStore";
export { Known, knownBy, LogEntry, Stamp, WayIn } from "./entry";
export { formatVersion, Header, PublicKey, Signature } from "./header";
export { indexedDbJournal } from "./indexedDbJournal";
export { type IndexedDbOptions, indexedDbStore } from "./indexedDbStore";
export type {
  Appended,
  Journal,
  JournalTrouble,
  JournalTroubleCode,
  KeptSession,
  ListedSession,
  Opened,
  ReadSession,
  ResumedSession,
  SignedSoFar,
  Signer,
  Writer,
} from "./journal";
export { type MemoryJournal, memoryJournal } from "./memoryJournal";
export { type LogClock, penOf } from "./penOf";
export * from "./personal";
export { Closing, makeClosing, Seal } from "./seal";
export { fingerprint, isSignedBy, newKeyPair, newSigner, signerOf } from "./signing";
export { Summary } from "./summary";
export { madeAtMs, Uuidv7, uuidv7 } from "./uuidv7";
export { walkChain } from "./walkChain";
export { readWallTime, WallTime, wallTime } from "./wallTime";
