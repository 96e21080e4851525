/** Sound that is slow to make, made once and kept under out/bench: 16 kHz mono, bare 32-bit floats as they were made. */
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";

let spentMs = 0;
/** How long this process has made sounds that were not kept yet. */
export const makingMs = (): number => spentMs;

/** @param name of a file under out/bench, another one for another sound. */
export function kept(name: string, make: () => Float32Array): Float32Array {
  const path = join("out", "bench", `${name}.f32`);
  if (!existsSync(path)) {
    const began = performance.now();
    const sound = make();
    mkdirSync(dirname(path), { recursive: true });
    // Another process may make the same: each writes a file of its own, and the last one moved there stays.
    const beside = `${path}.${process.pid}`;
    writeFileSync(beside, new Uint8Array(sound.buffer, sound.byteOffset, sound.byteLength));
    renameSync(beside, path);
    spentMs += performance.now() - began;
  }
  return new Float32Array(new Uint8Array(readFileSync(path)).buffer);
}
