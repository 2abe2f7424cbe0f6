"use client";
/** Under the sheet: what its drawing means, what themes were promised, the months beside it; on a phone the bar by the thumb. */
import Link from "next/link";
import { addMonths } from "#lib/calendar/days.ts";
import { monthName } from "#lib/formats/dates.ts";
import { limitsOfMonth } from "#lib/month/types.ts";
import { own } from "#lib/plan/lookup.ts";
import { monthCounts, promiseWords } from "#lib/tide/month-counts.ts";
import styles from "./month.module.css";
import type { MonthDesk } from "./month-desk.ts";
import { FillButton } from "./month-head.tsx";

export function MonthFoot({ desk }: { readonly desk: MonthDesk }) {
  const { props, shown } = desk;
  return (
    <footer className={styles.foot}>
      <p>{legendWords(desk)}</p>
      <p>{dropWords(desk)}</p>
      <p className={styles.months}>
        <span>{promiseWords(shown.look.sums)}</span>
        {[-1, 1].map((step) => {
          const other = addMonths(props.month, step);
          return (
            <Link key={other} href={`/programme/${other}`}>
              {monthName(other, desk.formats)}
            </Link>
          );
        })}
      </p>
    </footer>
  );
}

/** "Loft above the rail, Harbour room below. Solid: Evening regulars. Dashed: not signed. Brackets: no plan." */
export function legendWords({
  shown: { file },
  choice: { rooms, regulars },
}: Pick<MonthDesk, "shown" | "choice">): string {
  const [first, second] = rooms.map((id) => own(file.rooms, id)?.name ?? "another room");
  const where =
    rooms.length === 2
      ? `${first} above the rail, ${second} below. `
      : rooms.length > 2
        ? "A line for each room. "
        : "";
  const whose = regulars === null ? "" : `Solid: ${own(file.regulars, regulars)?.name ?? ""}. `;
  return `${where}${whose}Dashed: not signed. Brackets: no plan.`;
}

export function dropWords({ shown: { file } }: Pick<MonthDesk, "shown">): string {
  const { recoveryHours } = limitsOfMonth(file);
  return `Drop: work, then ${recoveryHours} h of rest (general guidance, not advice); number: cut short.`;
}

/** All sixteen groups, and the fill, by the thumb. */
export function PhoneBar({ desk }: { readonly desk: MonthDesk }) {
  const { choice, choose, month } = desk;
  const empty = month.writes ? monthCounts(month.file, month.look.sums, []).empty : 0;
  return (
    <div className={styles.bar}>
      {empty > 0 && <FillButton desk={desk} empty={empty} />}
      <button
        type="button"
        className="button"
        aria-pressed={choice.allGroups}
        onClick={() => choose({ allGroups: !choice.allGroups })}
      >
        {choice.allGroups ? "Classes in words" : "All 16 muscles"}
      </button>
    </div>
  );
}
