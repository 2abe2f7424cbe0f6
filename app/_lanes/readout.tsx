"use client";
/** What the pointer or the keyboard is on, in full, as one line. Screen readers read the cell itself. */
import type { ClassCell, Lane } from "#lib/lanes/types.ts";
import { timesOf } from "./cell-words.ts";
import styles from "./whole-class.module.css";

export function Readout({ over }: { over: { readonly lane: Lane; readonly cell: ClassCell } | null }) {
  return (
    <p className={styles.readout} aria-hidden="true">
      {over && (
        <span>
          <span className={styles.when}>{timesOf(over.cell)}</span> <b>{over.cell.name}</b>
          {over.lane.kind === "work" || over.lane.kind === "headings" ? " · " : ` · ${over.lane.name.toLowerCase()}: `}
          {over.cell.say}
        </span>
      )}
    </p>
  );
}
