/** The month's name, what is open in it, who is here, and whether all is saved. */
import { saveWords } from "#lib/client/doc-session/save-state.ts";
import { plural } from "#lib/plan/format.ts";
import styles from "./month.module.css";
import type { MonthSession } from "./month-session.ts";
import type { MonthPageProps, MonthSnapshot } from "./month-types.ts";
import { monthTitle } from "./words.ts";

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
      <p className={styles.sums}>{month.ready ? <Sums month={month} /> : null}</p>
      <p className={styles.state}>
        {others.length > 0 ? <span>here: {others.map((person) => person.name.split(" ")[0]).join(", ")}</span> : null}
        {month.ready && !month.writes ? <span>to read</span> : null}
        <span role="status" data-save={month.saveState}>
          {saveWords(month)}
        </span>
        {month.writes ? (
          <span className={styles.undo}>
            <button type="button" className="button" disabled={!month.canUndo} onClick={() => session.undo()}>
              Undo
            </button>
            <button type="button" className="button" disabled={!month.canRedo} onClick={() => session.redo()}>
              Redo
            </button>
          </span>
        ) : null}
      </p>
    </header>
  );
}

function Sums({ month }: { readonly month: MonthSnapshot }) {
  const kinds = new Map<string, number>();
  for (const [, problems] of month.problems) {
    const own = new Set(problems.map((problem) => problem.kind));
    for (const kind of own) kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  }
  const count = (...of: string[]) => of.reduce((sum, kind) => sum + (kinds.get(kind) ?? 0), 0);
  const unsigned = count("plan-unsigned", "plan-changed");
  const missing = count("no-plan", "plan-not-found");
  const clashes = count("coach-clash", "room-clash") / 2;
  const long = count("plan-too-long");
  const open = [
    missing > 0 ? `${missing} without a plan` : "",
    unsigned > 0 ? `${unsigned} not signed` : "",
    clashes > 0 ? plural(clashes, "clash", "clashes") : "",
    long > 0 ? `${long} too long` : "",
  ].filter((part) => part !== "");
  return (
    <>
      {plural(month.slots.length, "class", "classes")}
      {open.length > 0 ? `; still to come: ${open.join(", ")}` : ""}
    </>
  );
}
