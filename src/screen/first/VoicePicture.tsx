/** One's own voice as it comes in: the last six seconds of loudness, louder is taller. A picture, told in words beside it. */
import { useEffect, useRef } from "react";
import { useShared } from "../useModel";
import styles from "./FirstRun.module.css";

const bars = 60;
const places = Array.from({ length: bars }, (_, place) => place);

export function VoicePicture() {
  const { level, words } = useShared();
  const picture = useRef<SVGSVGElement>(null);
  useEffect(() => {
    const heard: number[] = places.map(() => 0);
    return level.subscribe(() => {
      heard.push(loudness(level.now));
      heard.shift();
      const shapes = picture.current?.children ?? [];
      for (const [place, loud] of heard.entries()) shapes[place]?.setAttribute("transform", `scale(1 ${0.02 + loud})`);
    });
  }, [level]);
  return (
    <figure className={styles.voice}>
      <svg
        ref={picture}
        viewBox={`0 -50 ${bars * 4} 100`}
        preserveAspectRatio="none"
        aria-hidden="true"
        data-testid="voice-picture"
      >
        {places.map((place) => (
          <rect key={place} x={place * 4} y={-50} width={2.6} height={100} rx={1.3} transform="scale(1 0.02)" />
        ))}
      </svg>
      <figcaption>{words.first.voicePicture}</figcaption>
    </figure>
  );
}

/** 0..1 from -60 dB to 0 dB full scale. */
const loudness = (rms: number): number => Math.min(1, Math.max(0, 1 + (20 * Math.log10(Math.max(rms, 1e-6))) / 60));
