/** The one thing to do now, very large, and what comes after it. */
import { bookFor } from "../../announcements/phrasebooks";
import type { Text } from "../../session/protocol";
import type { SessionView } from "../model";
import { useShared } from "../useModel";
import { CommandButton } from "./CommandButton";
import { HandCount } from "./HandCount";
import { lettersFor, linesOf } from "./letters";
import styles from "./Now.module.css";
import type { Standing } from "./standing";

export function Now({ standing: { now, question }, view }: { standing: Standing; view: SessionView }) {
  const { words } = useShared();
  const { language } = view.state.context.input;
  const inWords = (text: Text) => text[language] ?? text.en;
  const w = words.session;
  if (now.kind !== "steps") {
    const [title, say] = {
      atWork: [w.atWork, w.atWorkSay],
      listOver: [w.listOver, w.listOverSay],
      mayClose: [w.mayClose, w.mayCloseSay],
      firstAid: [w.firstAid, bookFor(language).ask.exposure.firstAid],
    }[now.kind];
    return (
      <section className={styles.now} data-testid="now" data-kind={now.kind} aria-live="polite">
        <h1 className={styles.show} data-size="usual">
          {title}
        </h1>
        <p className={styles.say}>{say}</p>
        {now.kind === "atWork" && question === null && view.listenedFor.has("finish") && (
          <CommandButton command="finish" listenedFor={view.listenedFor} area="finish" />
        )}
      </section>
    );
  }
  const [first] = now.steps;
  const isGroup = now.steps.length > 1;
  const said = first
    ? [first.say, first.caution].flatMap((text) => (text ? [linesOf(inWords(text), "said")] : []))
    : [];
  const room = {
    "--shown": first ? linesOf(inWords(first.show), "shown") : 1,
    "--said": said.reduce((sum, lines) => sum + lines, 0),
  } as React.CSSProperties;
  return (
    <section
      className={styles.now}
      style={room}
      data-testid="now"
      data-kind="steps"
      data-step={first?.id}
      aria-live="polite"
    >
      {isGroup ? (
        <h1 className={styles.group}>
          {now.steps.map((step) => (
            <span key={step.id}>{inWords(step.show)}</span>
          ))}
        </h1>
      ) : (
        first && (
          <>
            <h1 className={styles.show} data-size={lettersFor(inWords(first.show))}>
              {inWords(first.show)}
            </h1>
            <p className={styles.say}>{inWords(first.say)}</p>
            {first.caution && <p className={styles.caution}>{inWords(first.caution)}</p>}
          </>
        )
      )}
      {view.handCount && <HandCount timer={view.handCount} />}
      <p className={styles.next}>
        <b>{now.next ? w.next : w.last}</b>
        {now.next && <span>{inWords(now.next.show)}</span>}
      </p>
    </section>
  );
}
