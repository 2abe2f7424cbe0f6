"use client";
/**
 * The month's sheet: a table of days, with its drawing over it. Who reads with the ears hears the table; the drawing adds
 * nothing to its words.
 */
import type { CSSProperties, RefObject } from "react";
import { DayOfMonth } from "./day-row.tsx";
import { DropsDrawing } from "./drops-drawing.tsx";
import { RailDrawing } from "./rail-drawing.tsx";
import styles from "./sheet.module.css";
import { SheetHead } from "./sheet-head.tsx";
import type { TideSheetProps } from "./sheet-types.ts";

interface TideTableProps extends TideSheetProps {
  readonly title: string;
  readonly body: RefObject<HTMLTableSectionElement | null>;
  readonly onCoach: (coach: string | null) => void;
}

export function TideTable({ shown, hands, title, body, onCoach }: TideTableProps) {
  const { layout, sheet } = shown;
  return (
    <div className={styles.sheet} data-kind={layout.kind} style={columnStyle(shown)}>
      <table className={styles.table} onKeyDown={hands.onKeyDown}>
        <caption className="visually-hidden">{title}</caption>
        <SheetHead shown={shown} onCoach={onCoach} />
        <tbody ref={body}>
          {sheet.days.map((day, at) => (
            <DayOfMonth key={day.date} day={day} at={at} shown={shown} hands={hands} />
          ))}
        </tbody>
      </table>
      <RailDrawing shown={shown} />
      <DropsDrawing shown={shown} onPoint={hands.onPoint} onOpen={hands.onOpen} />
    </div>
  );
}

/** Lengths that the style sheet lays the columns out by. */
function columnStyle({ layout, sheet, tops }: TideSheetProps["shown"]): CSSProperties {
  const px = (n: number) => `${n}px`;
  return {
    "--date": px(layout.date),
    "--rail-width": px(layout.rail),
    "--group": px(layout.group),
    "--groups": px(layout.group * sheet.columns.length),
    "--like": px(layout.like),
    "--coach": px(layout.coach),
    "--findings": px(layout.findings),
    "--foot": px(tops.at(-1) ?? 0),
    "--lanes": String(Math.max(1, sheet.rooms.length > 2 ? sheet.rooms.length : 1)),
  } as CSSProperties;
}
