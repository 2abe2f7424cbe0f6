"use client";
/** One line in words: what the pointer is over or the keyboard on, in full. Screen readers hear the cell itself. */
import type { ClassCell, Lane } from "#lib/lanes/types.ts";
import styles from "./whole-class.module.css";
import { timesOf } from "./words.ts";

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
