"use client";
/** The window of a plate, over the rails: the body on the machine, on the ground of its pattern, whose word stands in it. */
import { FACING_WORDS, tintOf } from "#app/_session/item-words.ts";
import { tagWords } from "#lib/plan/format.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import styles from "./plate.module.css";

interface PlateWindowProps {
  readonly plan: Plan;
  readonly item: MoveItem;
  /** There is room to say the set-up in words. */
  readonly open: boolean;
}

export function PlateWindow({ plan, item, open }: PlateWindowProps) {
  const move = moveOf(plan, item);
  return (
    <span className={styles.window} data-ground={tintOf(move)} aria-hidden="true">
      <span className={styles.pattern}>{move?.pattern ?? "not known"}</span>
      {open && move && (
        <span className={styles.setUp}>
          {setUpWords(move, item).map((words) => (
            <span key={words}>{words}</span>
          ))}
        </span>
      )}
    </span>
  );
}

function setUpWords(move: Move, item: MoveItem): string[] {
  const held = (what: string, place: string) => (place === "free" ? "" : `${what}: ${tagWords(place)}`);
  return [
    tagWords(move.position),
    STATION_WORDS[move.station],
    FACING_WORDS[item.facing ?? move.facing],
    held("hands", move.hands),
    held("feet", move.feet),
  ].filter((words) => words !== "");
}

const STATION_WORDS: Readonly<Record<Move["station"], string>> = {
  front: "at the front platform",
  carriage: "on the carriage",
  back: "at the back platform",
  floor: "on the floor",
};
