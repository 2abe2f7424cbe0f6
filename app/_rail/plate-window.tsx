"use client";
/** The window of a plate, over the rails: the body on the machine, on the ground of its pattern, whose word stands in it. */
import { lateFigure } from "#app/_parts/late-figure.tsx";
import { LatePart } from "#app/_parts/late-part.tsx";
import { tintOf } from "#app/_parts/tints.ts";
import { FACING_WORDS } from "#app/_session/item-words.ts";
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
      {move && <Figure move={move} item={item} px={open ? OPEN_PX : REST_PX} />}
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

const REST_PX = 56;
const OPEN_PX = 124;

/** Worked out when it comes into view, and after the page can be used. */
function Figure({ move, item, px }: { readonly move: Move; readonly item: MoveItem; readonly px: number }) {
  const { side, facing } = item;
  const props = { move, px, side: side === "alternating" ? undefined : side, facing, decoration: true };
  return (
    <span className={styles.figure}>
      <LatePart part={lateFigure} props={props} meanwhile={null} />
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
