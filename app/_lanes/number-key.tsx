"use client";
/** What the numbers of blocks stand for that are too narrow for their names, and the way there. */
import { useMemo } from "react";
import type { Axis } from "#lib/lanes/axis.ts";
import type { ClassLanes } from "#lib/lanes/types.ts";
import { clockTime } from "#lib/plan/format.ts";
import styles from "./whole-class.module.css";
import { namesOf, numberOf } from "./work-row.tsx";

interface NumberKeyProps {
  readonly lanes: ClassLanes;
  readonly axis: Axis;
  readonly selected: string | null;
  /** Without it the list is for paper: nothing to press. */
  readonly onGo?: (item: string) => void;
}

export function NumberKey({ lanes, axis, selected, onGo }: NumberKeyProps) {
  const work = lanes.lanes.find((lane) => lane.kind === "work");
  const fits = useMemo(() => (work ? namesOf(work, axis).fits : []), [work, axis]);
  const unnamed = (work?.cells ?? []).filter((cell, i) => cell.item !== null && fits[i]?.way === "number");
  if (unnamed.length === 0) return null;
  return (
    <section className={styles.numberKey} aria-label="What the numbers stand for">
      <ul>
        {unnamed.map((cell) => {
          const { item, name } = cell;
          const words = `${clockTime(cell.from)} ${name}`;
          return item === null ? null : (
            <li key={cell.key}>
              <span className={styles.keyNumber}>{numberOf(cell)}</span>
              {onGo ? (
                <button
                  type="button"
                  className="text-button text-button-low"
                  aria-current={item === selected || undefined}
                  onClick={() => onGo(item)}
                >
                  {words}
                </button>
              ) : (
                <span>{words}</span>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
