/** The month's name, what is still to do in it, who else is here, and whether everything is saved. */
import { UndoButtons } from "#app/_parts/commands/undo-buttons.tsx";
import { saveWords } from "#lib/client/doc-session/save-state.ts";
import styles from "./month.module.css";
import type { MonthSession } from "./month-session.ts";
import type { MonthPageProps, MonthSnapshot } from "./month-types.ts";
import { monthTitle, openSums } from "./month-words.ts";

interface HeadProps {
  readonly session: MonthSession;
  readonly props: MonthPageProps;
  readonly month: MonthSnapshot;
}

export function MonthHead({ session, props, month }: HeadProps) {
  const others = month.present.filter((person) => person.userId !== props.me.id);
  return (
    <header className={styles.head}>
      <h1>{monthTitle(props.month)}</h1>
      <p className={styles.sums}>{month.ready && openSums(month.slots.length, month.problems)}</p>
      <p className={styles.state}>
        {others.length > 0 && <span>Also here: {others.map((person) => person.name.split(" ")[0]).join(", ")}</span>}
        {month.ready && !month.writes && <span>read only</span>}
        <span role="status" data-save={month.saveState}>
          {saveWords(month)}
        </span>
        {month.writes && <UndoButtons session={session} can={month} className={styles.undo} />}
      </p>
    </header>
  );
}
