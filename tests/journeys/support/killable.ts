/** A browser on a profile of its own that can be killed like a power cut kills it: SIGKILL, no farewell. */
import { readdirSync, readFileSync, readlinkSync } from "node:fs";
import { type BrowserContext, chromium } from "playwright-core";
import { launchOptions } from "./place";

export interface Killable {
  readonly context: BrowserContext;
  /** Kills every process of this browser at once. */
  kill(): Promise<void>;
}

/** @param profile a folder of the test's own; the processes are told apart by it. */
export async function openKillable(profile: string): Promise<Killable> {
  const context = await chromium.launchPersistentContext(profile, {
    ...launchOptions({ kind: "beeps" }),
    viewport: { width: 1280, height: 800 },
  });
  return {
    context,
    async kill() {
      const gone = new Promise<void>((closed) => context.once("close", () => closed()));
      const root = processesOf(profile);
      const all = [...root, ...root.flatMap(childrenOf)];
      for (const pid of all) killNow(pid);
      await gone;
      // One that still waits for the disk would hold the store's lock.
      while (all.some(isAlive)) await new Promise((soon) => setTimeout(soon, 50));
    },
  };
}

/** The browser process: the one whose command line names our profile and that is nobody's helper. */
function processesOf(profile: string): number[] {
  return allProcesses().filter((pid) => {
    const words = commandLine(pid);
    return words.includes(`--user-data-dir=${profile}`) && !words.some((word) => word.startsWith("--type="));
  });
}

const allProcesses = (): number[] =>
  readdirSync("/proc")
    .filter((name) => /^\d+$/.test(name))
    .map(Number);

function commandLine(pid: number): string[] {
  try {
    return readFileSync(`/proc/${pid}/cmdline`, "utf8").split("\0");
  } catch {
    return [];
  }
}

function childrenOf(pid: number): number[] {
  const own = allProcesses().filter((other) => parentOf(other) === pid && readlink(other) === readlink(pid));
  return [...own, ...own.flatMap(childrenOf)];
}

function parentOf(pid: number): number {
  try {
    return Number(/^PPid:\s+(\d+)$/m.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1] ?? 0);
  } catch {
    return 0;
  }
}

/** A zombie holds nothing any more. */
function isAlive(pid: number): boolean {
  try {
    return !/^State:\s+[ZX]/m.test(readFileSync(`/proc/${pid}/status`, "utf8"));
  } catch {
    return false;
  }
}

function readlink(pid: number): string {
  try {
    return readlinkSync(`/proc/${pid}/exe`);
  } catch {
    return "";
  }
}

function killNow(pid: number): void {
  try {
    process.kill(pid, "SIGKILL");
  } catch {
    // It went with its parent.
  }
}
