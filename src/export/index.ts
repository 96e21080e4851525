/** Handing over: the sealed record, its verifier, its schemas and its tables. */

export { currentRules } from "../session/rules";
export { factsCsv } from "./factsCsv";
export { RecordFile, recordOf, recordText } from "./recordFile";
export { type Replay, type Replayed, replay, summaryBy } from "./replay/replay";
export { type SealedRecord, sealRecord } from "./sealRecord";
export { summarise } from "./summarise";
export { type SurfaceRow, surfaceRows, surfacesCsv, wettings } from "./surfacesCsv";
export { inWords, type Place, passes, type Verdict, whatItProves } from "./verdict";
export { type VerifyOptions, verifyRecord } from "./verifyRecord";
