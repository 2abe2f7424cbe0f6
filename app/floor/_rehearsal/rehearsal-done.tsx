/** After a rehearsal: what was measured, and where it went. */
import type { ReactNode } from "react";
import type { Card } from "#lib/card/schema.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { clockTime, plural } from "#lib/plan/format.ts";
import ready from "../_ready/ready-screen.module.css";

interface Props {
  readonly card: Card;
  readonly log: ClassLog;
  readonly children: ReactNode;
}

export function RehearsalDone({ card, log, children }: Props) {
  const { changes, lines } = log.rehearsed ?? { changes: [], lines: [] };
  const measured = [plural(lines.length, "line"), plural(changes.length, "set-up")].join(" and ");
  return (
    <div className={ready.ready}>
      <h1 className={ready.title}>{log.whole ? "The rehearsal is done" : "The rehearsal was ended early"}</h1>
      <p className={ready.about}>
        {card.edition.title} · {clockTime(log.elapsed)}
      </p>
      <p>Yours: {measured} measured.</p>
      {children}
    </div>
  );
}
