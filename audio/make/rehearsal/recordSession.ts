/**
 * `npm run rehearsal -- [--protocol ID] [--brisk] [--snr DB | --quiet] [--seed N]`: renders a recorded session into
 * out/rehearsal, by default the convention booth, beside a machine at 15 dB. Same arguments, same sound.
 */
import { parseArgs } from "node:util";
import { bundledProtocols, protocolById } from "../../../src/session/protocols";
import { hasVoice, howToInstall } from "./artistVoice";
import { record, type Take, write } from "./record";

const options = {
  protocol: { type: "string", default: "conventionBooth" },
  brisk: { type: "boolean", default: false },
  snr: { type: "string", default: "15" },
  quiet: { type: "boolean", default: false },
  seed: { type: "string", default: "1" },
} as const;

function taken(): Take | string {
  try {
    const { values } = parseArgs({ options });
    const [snrDb, seed] = [Number(values.snr), Number(values.seed)];
    const ids = bundledProtocols.map(({ id }) => id).join(", ");
    if (!protocolById(values.protocol)) return `"${values.protocol}" is not a protocol: ${ids}`;
    if (!Number.isFinite(snrDb)) return `"${values.snr}" is not a number of decibels`;
    if (!Number.isInteger(seed)) return `"${values.seed}" is not a whole number`;
    return { protocol: values.protocol, brisk: values.brisk, snrDb: values.quiet ? null : snrDb, seed };
  } catch (problem) {
    return problem instanceof Error ? problem.message : String(problem);
  }
}

const take = taken();
const trouble = typeof take === "string" ? take : hasVoice() ? null : howToInstall;
if (trouble !== null || typeof take === "string") {
  console.error(`rehearsal: ${trouble}`);
  process.exitCode = 2;
} else {
  const recorded = await record(take);
  const { wav, timeline } = write(take, recorded);
  const minutes = (recorded.samples.length / 16_000 / 60).toFixed(1);
  console.log(`${wav}: ${minutes} min, ${recorded.labels.length} phrases (${timeline})`);
}
