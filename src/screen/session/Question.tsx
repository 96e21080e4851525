/** What is being asked, with its answers as touch targets: the item, the reason, the count, the read-back. */
import { type ReactNode, useEffect, useRef } from "react";
import { bookFor } from "../../announcements/phrasebooks";
import { textOf } from "../../announcements/utterance";
import { discrepancyReasons } from "../../session/fact";
import { type EventId, EventId as EventIds } from "../../session/protocol";
import type { SessionView } from "../model";
import { useShared } from "../useModel";
import { CommandButton } from "./CommandButton";
import styles from "./Question.module.css";
import { SharpsCount } from "./SharpsCount";
import { type Question as Asked, nameOf } from "./standing";

const touch = { by: "touch" } as const;

export function Question({ question, view }: { question: Asked; view: SessionView }) {
  const { words, asks } = useShared();
  const w = words.session.asks;
  const book = bookFor(view.state.context.input.language);
  switch (question.kind) {
    case "item":
      return (
        <Asking title={w.item}>
          {question.candidates.map((id, at) => (
            <button
              key={id}
              type="button"
              className={styles.answer}
              aria-current={at === question.at || undefined}
              onClick={() => asks.tell(namedReport(question.about, id), touch)}
            >
              {nameOf(view.state, id)}
            </button>
          ))}
        </Asking>
      );
    case "discrepancy":
      return (
        <Asking title={w.discrepancy}>
          {discrepancyReasons.map((reason) => (
            <button
              key={reason}
              type="button"
              className={styles.answer}
              aria-current={reason === question.offered || undefined}
              onClick={() => asks.tell({ type: "sharps.explained", reason }, touch)}
            >
              {words.session.discrepancies[reason]}
            </button>
          ))}
        </Asking>
      );
    case "sharps":
      return (
        <Asking title={w.sharps(question.expected)}>
          <SharpsCount expected={question.expected} />
        </Asking>
      );
    case "reason":
      return (
        <Asking title={w.reason}>
          <CommandButton command="reasonNotForClient" listenedFor={view.listenedFor} />
          <CommandButton command="reasonNoStock" listenedFor={view.listenedFor} />
          <CommandButton command="reasonOwnDecision" listenedFor={view.listenedFor} />
        </Asking>
      );
    case "wetness":
      return (
        <Asking title={w.wetness}>
          {question.surfaces.map((surface) => (
            <Wetness key={surface} surface={surface} view={view} />
          ))}
        </Asking>
      );
    case "outOfUse":
      return (
        <Asking title={w.outOfUse}>
          <CommandButton command="yes" listenedFor={view.listenedFor} />
          <CommandButton command="no" listenedFor={view.listenedFor} />
        </Asking>
      );
    case "lot":
      return (
        <Asking
          title={w.lot(nameOf(view.state, question.item), question.lot, question.expiry)}
          say={book.ask.closing.confirm}
        />
      );
    case "firstAid":
      return <Asking title={w.firstAid} say={book.ask.exposure.choice} stays />;
    default:
      return <Asking title={w[question.kind]} say={book.ask.closing.confirm} />;
  }
}

/** The report that lacked a name, said whole. */
function namedReport(about: string, id: string) {
  if (about === "applied") return { type: "surface.applied", surface: id } as const;
  if (about === "wiped") return { type: "surface.wiped", surface: id } as const;
  if (about === "mayTouch") return { type: "may.touch", item: id } as const;
  if (about === "outOfUse") return { type: "item.outOfUse", item: id } as const;
  const event: EventId = EventIds.parse(about);
  return { type: "event.reported", event, item: id } as const;
}

interface AskingProps {
  readonly title: string;
  readonly say?: string;
  /** What stands above it matters more. */
  readonly stays?: boolean;
  readonly children?: ReactNode;
}

function Asking({ title, say, stays = false, children }: AskingProps) {
  const section = useRef<HTMLElement>(null);
  // A list that was scrolled must not hide what is asked.
  useEffect(() => {
    // Newer browsers return a promise here, which React would take for a clean-up.
    if (!stays) section.current?.scrollIntoView({ block: "start" });
  }, [stays]);
  return (
    <section ref={section} className={styles.asking} aria-label={title} data-testid="question">
      <h2>{title}</h2>
      {say && <p>{textOf({ parts: [{ kind: "fixed", text: say }] })}</p>}
      {children && <div className={styles.answers}>{children}</div>}
    </section>
  );
}

/** Each surface is answered for by itself: one look, one word. */
function Wetness({ surface, view }: { surface: string; view: SessionView }) {
  const { words, asks } = useShared();
  const state = view.state.context.world.clocks[surface]?.state;
  const asked = state === "doubtful" ? words.session.clock.doubtful : words.session.clock.timeUp;
  const name = nameOf(view.state, surface);
  return (
    <fieldset className={styles.wetness}>
      <legend>
        {name}: {asked}
      </legend>
      <button
        type="button"
        className={styles.answer}
        aria-label={`${name}: ${words.command.yes}`}
        onClick={() => asks.tell({ type: "answer.yes", surface }, touch)}
      >
        {words.command.yes}
      </button>
      <button
        type="button"
        className={styles.answer}
        aria-label={`${name}: ${words.command.no}`}
        onClick={() => asks.tell({ type: "answer.no", surface }, touch)}
      >
        {words.command.no}
      </button>
    </fieldset>
  );
}
