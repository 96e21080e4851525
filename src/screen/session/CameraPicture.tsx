/** What the camera sees, so that the hand finds the place to hold the pack. */
import { useEffect, useRef, useSyncExternalStore } from "react";
import type { CameraCondition } from "../../barcode/codeCamera";
import { useShared } from "../useModel";
import styles from "./CameraPicture.module.css";

export function useCamera(): CameraCondition {
  const { camera } = useShared();
  return useSyncExternalStore(camera.subscribe, () => camera.condition);
}

export function CameraPicture() {
  const { camera, words } = useShared();
  const film = useRef<HTMLVideoElement>(null);
  const stream = useSyncExternalStore(camera.subscribe, () => camera.stream);
  useEffect(() => {
    const { current } = film;
    if (!current) return;
    current.srcObject = stream;
    // Muted and asked for by the artist; where it is refused the picture stands still and codes are read all the same.
    void current.play().catch(() => undefined);
  }, [stream]);
  return <video ref={film} className={styles.film} muted playsInline aria-label={words.codes.preview} />;
}
