/** What goes before any rule: said on every page of them. */
import styles from "./safety-note.module.css";

interface SafetyNoteProps {
  readonly sentences: readonly string[];
  readonly open?: boolean;
}

export function SafetyNote({ sentences, open = false }: SafetyNoteProps) {
  return (
    <details className={`notice ${styles.safety}`} open={open}>
      <summary>What goes before any rule</summary>
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </details>
  );
}
