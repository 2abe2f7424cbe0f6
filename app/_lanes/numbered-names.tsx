"use client";
/** Names of the blocks that are too narrow for one and show a number instead. Each leads to its item. */
import { useMemo } from "react";
import type { Axis } from "#lib/lanes/axis.ts";
import type { ClassLanes, WorkCell } from "#lib/lanes/types.ts";
import { clockTime } from "#lib/plan/format.ts";
import { useGo } from "./use-go.ts";
import styles from "./whole-class.module.css";
import { blockNumber, workNamesFit } from "./work-row.tsx";

interface NumberedNamesProps {
  readonly lanes: ClassLanes;
  readonly axis: Axis;
  readonly selected: string | null;
  /** On paper there is nothing to press. */
  readonly paper?: boolean;
}

export function NumberedNames({ lanes, axis, selected, paper = false }: NumberedNamesProps) {
  const work = lanes.lanes.find((lane) => lane.kind === "work");
  const fits = useMemo(() => (work ? workNamesFit(work, axis).fits : []), [work, axis]);
  const go = useGo();
  const numbered = (work?.cells ?? []).filter((cell, i) => cell.item !== null && fits[i]?.way === "number");
  if (numbered.length === 0) return null;
  return (
    <section className={styles.numberKey} aria-label="Names of the numbered items">
      <ul>
        {numbered.map((cell) => (
          <li key={cell.key}>
            <span className={styles.keyNumber}>{blockNumber(cell)}</span>
            {paper ? (
              <span>{timeAndName(cell)}</span>
            ) : (
              <button
                type="button"
                className="text-button text-button-low"
                aria-current={cell.item === selected || undefined}
                onClick={() => go(cell.item, false)}
              >
                {timeAndName(cell)}
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

const timeAndName = ({ from, name }: WorkCell): string => `${clockTime(from)} ${name}`;
