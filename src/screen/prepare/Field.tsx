/** The parts of a form: a field with its hint and what is wrong with it, a choice, a tick, a section. */
import { type ReactNode, useId } from "react";
import { useShared } from "../useModel";
import type { IssueCode } from "./draft";
import styles from "./Field.module.css";

interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly issue?: IssueCode | null;
  readonly hint?: string;
  readonly type?: "text" | "date";
  readonly numeric?: boolean;
  readonly autoComplete?: string;
}

export function Field({
  label,
  value,
  onChange,
  issue = null,
  hint,
  type = "text",
  numeric,
  autoComplete = "off",
}: FieldProps) {
  const { words } = useShared();
  const id = useId();
  const describedBy = [hint && `${id}-hint`, issue && `${id}-issue`].filter(Boolean).join(" ");
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type={type}
        inputMode={numeric ? "numeric" : undefined}
        value={value}
        autoComplete={autoComplete}
        aria-invalid={issue !== null && issue !== "outOfDate"}
        aria-describedby={describedBy || undefined}
        onChange={(changed) => onChange(changed.target.value)}
      />
      {hint && (
        <p id={`${id}-hint`} className={styles.hint}>
          {hint}
        </p>
      )}
      {issue && (
        <p id={`${id}-issue`} className={styles.issue}>
          {label} {words.prepare.issues[issue]}
        </p>
      )}
    </div>
  );
}

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly (readonly [T, string])[];
  readonly onChange: (value: T) => void;
  readonly hint?: string;
}

export function Choice<T extends string>({ label, value, options, onChange, hint }: ChoiceProps<T>) {
  const name = useId();
  return (
    <fieldset className={styles.choice}>
      <legend>{label}</legend>
      <div className={styles.options}>
        {options.map(([option, text]) => (
          <label key={option}>
            <input type="radio" name={name} checked={option === value} onChange={() => onChange(option)} />
            <span>{text}</span>
          </label>
        ))}
      </div>
      {hint && <p className={styles.hint}>{hint}</p>}
    </fieldset>
  );
}

interface TickProps {
  readonly label: string;
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
  readonly hint?: string;
}

export function Tick({ label, checked, onChange, hint }: TickProps) {
  return (
    <div className={styles.tick}>
      <label>
        <input type="checkbox" checked={checked} onChange={(changed) => onChange(changed.target.checked)} />
        <span>{label}</span>
      </label>
      {hint && <p className={styles.hint}>{hint}</p>}
    </div>
  );
}

export function Section({ title, hint, children }: { title: string; hint?: string; children: ReactNode }) {
  const id = useId();
  return (
    <section className={styles.section} aria-labelledby={id}>
      <div className={styles.heading}>
        <h2 id={id}>{title}</h2>
        {hint && <p>{hint}</p>}
      </div>
      <div className={styles.body}>{children}</div>
    </section>
  );
}
