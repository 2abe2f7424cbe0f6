/** The ways to the month before and the month after. */
import Link from "next/link";
import { addMonths } from "#lib/calendar/days.ts";
import styles from "./month.module.css";
import { monthTitle } from "./month-words.ts";

export function OtherMonths({ month }: { readonly month: string }) {
  return (
    <nav className={styles.turn} aria-label="Other months">
      {[-1, 1].map((step) => {
        const other = addMonths(month, step);
        return (
          <Link key={other} className="button" href={`/programme/${other}`}>
            {monthTitle(other)}
          </Link>
        );
      })}
    </nav>
  );
}
