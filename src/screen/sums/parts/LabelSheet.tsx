/** A label to stick on a bottle or a pack: shown as it will print, printed alone, and said aloud. */
import { useRef } from "react";
import { useStudioModel } from "../useStudio";
import { useSumWords } from "../useSumWords";
import styles from "./LabelSheet.module.css";

interface Props {
  readonly title: string;
  readonly printed: readonly string[];
  readonly spoken: string;
}

export function LabelSheet({ title, printed, spoken }: Props) {
  const studio = useStudioModel();
  const sheet = useRef<HTMLElement>(null);
  const print = () => {
    const here = sheet.current;
    if (!here) return;
    // The print stylesheet shows a label that stands in the body itself, and then nothing else.
    const alone = here.cloneNode(true) as HTMLElement;
    alone.dataset.print = "";
    document.body.append(alone);
    window.print();
    alone.remove();
  };
  return (
    <div className={styles.wrap}>
      <figure ref={sheet} className={styles.sheet} aria-label={title}>
        {printed.map((line, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a label's lines do not move
          <p key={at}>{line}</p>
        ))}
      </figure>
      <div className={styles.acts}>
        <button type="button" onClick={print}>
          {useSumWords().label.print}
        </button>
        <button type="button" onClick={() => studio.say([{ kind: "free", text: spoken }])}>
          {useSumWords().label.say}
        </button>
      </div>
    </div>
  );
}
