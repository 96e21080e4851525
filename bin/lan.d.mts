import type { networkInterfaces } from "node:os";

export const certificatePath: string;
export function lanAddresses(interfaces?: ReturnType<typeof networkInterfaces>): string[];
export function certificateFor(
  folder: string,
  addresses: readonly string[],
  nowMs?: number,
): Promise<{ cert: string; key: string; isNew: boolean; fingerprint: string }>;
export function lanWords(addresses: readonly string[], port: number, fingerprint: string): string;
