"use client";
/** The window of a plate on the rail: the shared one, with the set-up in words where the plate is open. */
import { LatePlateFigure } from "#app/_parts/plate/late-plate-figure.tsx";
import { PlateWindow } from "#app/_parts/plate/plate-window.tsx";
import { FACING_WORDS } from "#app/_session/item-words.ts";
import { tagWords } from "#lib/plan/format.ts";
import type { Move, MoveItem } from "#lib/plan/schema.ts";
import styles from "./plate.module.css";

interface RailWindowProps {
  readonly move: Move | undefined;
  readonly item: MoveItem;
  /** There is room to say the set-up in words. */
  readonly open: boolean;
}

const REST_PX = 56;
const OPEN_PX = 124;

export function RailWindow({ move, item, open }: RailWindowProps) {
  const { side, facing } = item;
  return (
    <PlateWindow move={move} figure={<LatePlateFigure {...{ move, side, facing }} px={open ? OPEN_PX : REST_PX} />}>
      {open && move && (
        <span className={styles.setUp}>
          {setUpWords(move, item).map((words) => (
            <span key={words}>{words}</span>
          ))}
        </span>
      )}
    </PlateWindow>
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
