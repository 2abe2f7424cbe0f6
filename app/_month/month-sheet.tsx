"use client";
/** The sheet with its head: the month's name and counts, whose work is shown, the lying body, the chosen finding. */
import { useMemo } from "react";
import { dayAndTime, monthTitle } from "#lib/formats/dates.ts";

import { tideHours } from "#lib/tide/hours.ts";
import { FindingCorner } from "./finding-corner.tsx";
import styles from "./month.module.css";
import type { MonthDesk } from "./month-desk.ts";
import { MonthFoot, PhoneBar } from "./month-foot.tsx";
import { MonthHead } from "./month-head.tsx";
import type { SheetGuest, SheetShown } from "./sheet/sheet-types.ts";
import { TideTable } from "./sheet/tide-table.tsx";
import { type MeasuredSheet, useTideSheet } from "./sheet/use-sheet.ts";
import { useHands } from "./use-hands.ts";

export function MonthSheet({ desk }: { readonly desk: MonthDesk }) {
  const { choice, choose, shown, props } = desk;
  const { regulars, rooms, allGroups, allCoaches } = choice;
  const measured = useTideSheet({
    ...{ month: shown.file, sums: shown.look.sums, findings: shown.look.findings },
    ...{ regulars, rooms, allGroups, allCoaches, formats: desk.formats, holdsHours: choice.moving !== null },
  });
  const hands = useHands(desk, measured);
  const drawn = useDrawn(desk, measured);
  return (
    <div className={styles.desk} data-kind={measured.layout.kind}>
      <MonthHead desk={desk} layout={measured.layout} />
      <div ref={measured.box}>
        <TideTable
          shown={drawn}
          hands={hands}
          body={measured.body}
          title={`The classes of ${monthTitle(props.month, desk.formats)}, day by day`}
          onCoach={(onlyCoach) => choose({ onlyCoach })}
        />
      </div>
      {measured.layout.kind !== "laptop" && <FindingCorner desk={desk} />}
      <MonthFoot desk={desk} />
      {measured.layout.kind === "phone" && <PhoneBar desk={desk} />}
    </div>
  );
}

function useDrawn(desk: MonthDesk, { sheet, layout, tops }: MeasuredSheet): SheetShown {
  const { choice, month, chosen, props } = desk;
  const guests = useGuests(desk);
  const proposed = useMemo(() => new Set(Object.keys(choice.proposed)), [choice.proposed]);
  const [first] = chosen;
  const minutes = first?.rule === "short-recovery" ? Number(first.values.minutes) : undefined;
  const { at, panel, moving } = choice;
  return {
    ...{ sheet, layout, tops, guests, proposed, changed: desk.since.marks },
    tabStop:
      at.slot !== null && sheet.days.some(({ marks }) => marks.some(({ slot }) => slot.id === at.slot))
        ? at.slot
        : at.date,
    openSlot: panel?.kind === "class" ? panel.slot : null,
    lit: choice.lit,
    moving: moving?.slot ?? null,
    onlyCoach: choice.onlyCoach,
    finding: first ? { id: first.id, slots: first.slots, says: minutes === undefined ? "" : tideHours(minutes) } : null,
    today: month.today,
    writes: month.writes && props.month.length > 0,
  };
}

/** Others in the month, and the class that each has open. */
function useGuests({ month, props }: MonthDesk): readonly SheetGuest[] {
  const { present, places } = month;
  return useMemo(
    () =>
      present
        .filter(({ userId }) => userId !== props.me.id)
        .map(({ userId, name }) => ({
          name: name.split(" ")[0] ?? name,
          slot: places.find((place) => place.userId === userId && place.itemId !== null)?.itemId ?? null,
        })),
    [present, places, props.me.id],
  );
}

/** What a moving class says to who cannot see it go: read out with each step. */
export function movingWords(desk: MonthDesk): string {
  const { moving } = desk.choice;
  if (!moving) return "";
  const count = desk.shown.look.findings.filter(({ slots }) => slots.includes(moving.slot)).length;
  const found = count === 0 ? "nothing to fix" : count === 1 ? "one finding" : `${count} findings`;
  return `${dayAndTime(moving.date, moving.start, desk.formats)}: ${found}`;
}
