/** After a rehearsal: what was measured, and where it went. */
import type { ReactNode } from "react";
import type { Card } from "#lib/card/schema.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { clockTime } from "#lib/plan/format.ts";
import ready from "../_ready/ready-screen.module.css";
import { measuredWords, rehearsedTitle } from "./rehearsal-words.ts";

interface Props {
  readonly card: Card;
  readonly log: ClassLog;
  readonly children: ReactNode;
}

export function RehearsalDone({ card, log, children }: Props) {
  return (
    <div className={ready.ready}>
      <h1 className={ready.title}>{rehearsedTitle(log.whole)}</h1>
      <p className={ready.about}>
        {card.edition.title} · {clockTime(log.elapsed)}
      </p>
      <p>{measuredWords(log)}</p>
      {children}
    </div>
  );
}
