/** While a pack is taken up: that the camera waits for its code, and what it sees; or that it does not work. */
import { useShared } from "../useModel";
import { CameraPicture, useCamera } from "./CameraPicture";
import styles from "./HoldUp.module.css";

export function HoldUp() {
  const { words } = useShared();
  const condition = useCamera();
  if (condition === "off") return null;
  return (
    <section className={styles.holdUp} aria-label={words.codes.camera[condition]} data-testid="hold-up">
      <p>{condition === "on" ? words.codes.holdUp : words.codes.camera[condition]}</p>
      {condition === "on" && <CameraPicture />}
    </section>
  );
}
