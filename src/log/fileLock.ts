/** One process writes a session: a lock file with the process's number in it. A dead process's lock is taken over. */
import { open, readFile, rm } from "node:fs/promises";

/** @returns false while another living process, or this one, holds the lock. */
export async function takeFileLock(path: string): Promise<boolean> {
  for (let tries = 0; tries < 2; tries++) {
    try {
      const file = await open(path, "wx");
      await file.writeFile(String(process.pid));
      await file.close();
      return true;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
      if (isAlive(Number(await readFile(path, "utf8").catch(() => "0")))) return false;
      await rm(path, { force: true });
    }
  }
  return false;
}

const isAlive = (pid: number): boolean => {
  if (!Number.isInteger(pid) || pid <= 0) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // There is such a process, but it is another user's.
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
};
