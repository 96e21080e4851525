/**
 * A loudspeaker and a microphone for browsers that run no audio context without them: a PulseAudio of our own that plays
 * into nothing, and hears what is played into its microphone. Nobody hears it, and it touches no other sound on the machine.
 */
import { type ChildProcess, execFile, spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";

const server = "/usr/bin/pulseaudio";
const control = "/usr/bin/pactl";

/** Null where there can be one; else what is missing, and how to get it. */
export const missingForSound: string | null =
  existsSync(server) && existsSync(control)
    ? null
    : "needs a sound server: apt-get install --no-install-recommends pulseaudio pulseaudio-utils";

export interface SoundDevice {
  /** For the browser that is to use it. */
  readonly env: Readonly<Record<string, string>>;
  /** Plays a WAV into the microphone, once, to its end. */
  say(wav: string): Promise<void>;
  /** Listens to the loudspeaker while `work` goes on. @returns its sound, 16 kHz, -1..1 */
  heardDuring(work: () => Promise<unknown>): Promise<Float32Array>;
  /** Pulls the microphone out, as one pulls a plug. */
  unplug(): Promise<void>;
  /** Puts it in again. */
  plugIn(): Promise<void>;
  close(): Promise<void>;
}

const patienceMs = 20_000;
const pause = (ms: number) => new Promise<void>((done) => setTimeout(done, ms));
const run = promisify(execFile);

export async function openSoundDevice(): Promise<SoundDevice> {
  const folder = await mkdtemp(join(tmpdir(), "gloveside-sound-"));
  const socket = join(folder, "socket");
  const env = { PULSE_SERVER: `unix:${socket}`, PULSE_RUNTIME_PATH: folder, PULSE_STATE_PATH: folder, HOME: folder };
  const modules = [
    `module-native-protocol-unix socket=${socket} auth-anonymous=1`,
    "module-null-sink sink_name=loudspeaker",
    "module-null-sink sink_name=mouth",
  ];
  const args = ["-n", "--exit-idle-time=-1", "--use-pid-file=no", "--daemonize=no", "--log-level=error"];
  const child = spawn(server, [...args, ...modules.flatMap((module) => ["-L", module])], {
    env: { ...process.env, ...env },
    stdio: "ignore",
  });
  const close = async () => {
    await ended(child);
    await rm(folder, { recursive: true, force: true });
  };
  const ask = (...given: readonly string[]) => run(control, given, { env: { ...process.env, ...env } });
  let plug = "";
  const plugIn = async () => {
    const microphone = ["module-remap-source", "master=mouth.monitor", "source_name=microphone"] as const;
    plug = (await ask("load-module", ...microphone)).stdout.trim();
    await ask("set-default-source", "microphone");
  };
  try {
    await until(() => ask("set-default-sink", "loudspeaker"));
    await plugIn();
  } catch (problem) {
    await close();
    throw problem;
  }
  const say = async (wav: string) => {
    await run("/usr/bin/paplay", ["--device=mouth", wav], { env: { ...process.env, ...env } });
  };
  const heardDuring = async (work: () => Promise<unknown>) => {
    const raw = ["--device=loudspeaker.monitor", "--raw", "--format=s16le", "--rate=16000", "--channels=1"];
    const recorder = spawn("/usr/bin/parec", raw, {
      env: { ...process.env, ...env },
      stdio: ["ignore", "pipe", "ignore"],
    });
    const parts: Buffer[] = [];
    recorder.stdout.on("data", (part: Buffer) => void parts.push(part));
    try {
      await work();
    } finally {
      await ended(recorder);
    }
    const all = Buffer.concat(parts);
    return Float32Array.from({ length: all.length >> 1 }, (_, n) => all.readInt16LE(2 * n) / 32_768);
  };
  const unplug = async () => void (await ask("unload-module", plug));
  return { env, say, heardDuring, unplug, plugIn, close };
}

async function until(works: () => Promise<unknown>): Promise<void> {
  for (const endMs = Date.now() + patienceMs; ; await pause(100)) {
    try {
      await works();
      return;
    } catch (problem) {
      if (Date.now() > endMs) throw problem;
    }
  }
}

async function ended(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const over = new Promise<void>((done) => child.once("exit", () => done()));
  child.kill();
  await over;
}
