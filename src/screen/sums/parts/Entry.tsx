/** One field of a form, with its hint and what is wrong with it in words; and a list to choose from. */
import { useId } from "react";
import styles from "../../prepare/Field.module.css";
import own from "./Entry.module.css";

interface EntryProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly hint?: string | undefined;
  readonly trouble?: string | null | undefined;
  readonly type?: "text" | "date" | "datetime-local";
  readonly isNumeric?: boolean;
  readonly maxLength?: number;
  /** For those who move the focus here from elsewhere. */
  readonly inputId?: string | undefined;
  readonly onLeave?: () => void;
}

export function Entry({
  label,
  value,
  onChange,
  hint,
  trouble,
  type = "text",
  isNumeric,
  maxLength = 120,
  inputId,
  onLeave,
}: EntryProps) {
  const made = useId();
  const id = inputId ?? made;
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        className={own.entry}
        type={type}
        inputMode={isNumeric ? "decimal" : undefined}
        value={value}
        maxLength={type === "text" ? maxLength : undefined}
        autoComplete="off"
        aria-invalid={Boolean(trouble)}
        aria-describedby={described(id, hint, trouble)}
        onChange={(changed) => onChange(changed.target.value)}
        onBlur={onLeave}
      />
      <About id={id} hint={hint} trouble={trouble} />
    </div>
  );
}

interface SelectProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly (readonly [T, string])[];
  readonly onChange: (value: T) => void;
  readonly hint?: string | undefined;
  readonly trouble?: string | null | undefined;
}

export function Select<T extends string>({ label, value, options, onChange, hint, trouble }: SelectProps<T>) {
  const id = useId();
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        className={own.select}
        value={value}
        aria-invalid={Boolean(trouble)}
        aria-describedby={described(id, hint, trouble)}
        onChange={(changed) => onChange(options[changed.target.selectedIndex]?.[0] ?? value)}
      >
        {options.map(([option, text]) => (
          <option key={option} value={option}>
            {text}
          </option>
        ))}
      </select>
      <About id={id} hint={hint} trouble={trouble} />
    </div>
  );
}

type Words = string | null | undefined;

const described = (id: string, hint: Words, trouble: Words): string | undefined =>
  [hint && `${id}-hint`, trouble && `${id}-issue`].filter(Boolean).join(" ") || undefined;

function About({ id, hint, trouble }: { id: string; hint: Words; trouble: Words }) {
  return (
    <>
      {hint && (
        <p id={`${id}-hint`} className={styles.hint}>
          {hint}
        </p>
      )}
      {trouble && (
        <p id={`${id}-issue`} className={styles.issue}>
          {trouble}
        </p>
      )}
    </>
  );
}
