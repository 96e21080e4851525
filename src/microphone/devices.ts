/** Which microphones there are. Labels are empty until permission has been given once. */

export interface Microphone {
  readonly deviceId: string;
  readonly label: string;
}

export async function microphones(): Promise<readonly Microphone[]> {
  const devices = (await navigator.mediaDevices?.enumerateDevices()) ?? [];
  return devices.filter((d) => d.kind === "audioinput").map(({ deviceId, label }) => ({ deviceId, label }));
}

/** Calls back whenever one is plugged in or pulled out. @returns stops that. */
export function onMicrophonesChanged(listen: () => void): () => void {
  navigator.mediaDevices?.addEventListener("devicechange", listen);
  return () => navigator.mediaDevices?.removeEventListener("devicechange", listen);
}

/** Calls back when leave to listen is given or taken, where the browser tells. @returns stops that. */
export function onPermissionChanged(listen: (isGranted: boolean) => void): () => void {
  const closing = new AbortController();
  // Older browsers know the microphone by no such name, and then say nothing.
  navigator.permissions
    ?.query({ name: "microphone" as PermissionName })
    .then((status) => {
      status.addEventListener("change", () => listen(status.state === "granted"), { signal: closing.signal });
    })
    .catch(() => undefined);
  return () => closing.abort();
}
