"use client";
/** One item on the rail: as tall as its time is long, with name, seconds, springs, talk as ink and heads-up as a notch. */
import { memo, type PointerEvent } from "react";
import { HoldSign, holdMarks } from "#app/_session/hold-sign.tsx";
import { plainNumber, plural } from "#lib/plan/format.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { notchOffset, type RailSegment } from "#lib/rail/layout.ts";
import { Coils } from "../_parts/coils/coil.tsx";
import { Seconds } from "../_parts/seconds.tsx";
import { nameOf, tintOf } from "../_session/item-words.ts";
import styles from "./rail.module.css";

export interface ItemMarks {
  readonly must: number;
  readonly look: number;
  readonly threads: number;
}

interface ItemOnRailProps {
  readonly item: PlanItem;
  readonly plan: Plan;
  readonly segment: RailSegment;
  readonly headsUp: number;
  /** Seconds of talk divided by seconds of the item; null when nothing is said. */
  readonly talk: number | null;
  /** Seconds of talk for which there is no time; 0 when it fits. */
  readonly talkOver: number;
  readonly marks: ItemMarks | undefined;
  /** Names of others who are on it. */
  readonly people: readonly string[];
  readonly selected: boolean;
  readonly tabbable: boolean;
  readonly editable: boolean;
  /** How far the item is from its place while it is dragged, px. */
  readonly dragged: number | null;
  readonly label: string;
  readonly measure: (element: HTMLElement | null) => void;
  readonly onGripDown: (kind: "end" | "place", item: PlanItem, event: PointerEvent) => void;
  readonly onPick: (id: string) => void;
}

/** Below this height the two lines of an item stand side by side, px. */
const FLAT_PX = 60;

export const ItemOnRail = memo(function ItemOnRail(props: ItemOnRailProps) {
  const { item, segment, selected, editable, dragged } = props;
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the listbox around it answers the keys
    <div
      role="option"
      id={`rail-${item.id}`}
      data-item={item.id}
      aria-selected={selected}
      tabIndex={props.tabbable ? 0 : -1}
      className={styles.item}
      {...looks(props)}
      style={{ top: segment.top + (dragged ?? 0), height: segment.height }}
      onClick={() => props.onPick(item.id)}
      onPointerDown={(event) => event.pointerType === "mouse" && props.onGripDown("place", item, event)}
    >
      {/* What is read aloud says more than the eye needs; what is seen is not read a second time. */}
      <span className="visually-hidden">{props.label}</span>
      <div className={styles.body} ref={props.measure} aria-hidden="true">
        <span className={styles.name}>
          {nameOf(props.plan, item)}
          {item.kind === "move" && <SideMark item={item} />}
        </span>
        <span className={styles.meta}>
          <Meta {...props} />
        </span>
      </div>
      {item.kind === "move" && <Ink share={props.talk} />}
      {item.kind === "move" && <Notch segment={segment} headsUp={props.headsUp} />}
      {editable && <Grips item={item} onGripDown={props.onGripDown} />}
    </div>
  );
});

/** What the stylesheet draws an item by. */
function looks({ item, plan, segment, selected, editable, dragged }: ItemOnRailProps) {
  return {
    "data-kind": item.kind,
    "data-shape": item.kind === "move" ? item.side : "both",
    "data-tint": item.kind === "move" ? tintOf(moveOf(plan, item)) : item.kind,
    "data-flat": segment.height < FLAT_PX || item.kind === "heading" || undefined,
    "data-selected": selected || undefined,
    "data-dragged": dragged !== null || undefined,
    "data-editable": editable || undefined,
  };
}

function Meta({ item, plan, marks, people, talkOver }: ItemOnRailProps) {
  const move = item.kind === "move" ? moveOf(plan, item) : undefined;
  return (
    <>
      {item.kind !== "heading" && <Seconds className={styles.seconds} value={item.seconds} />}
      {item.kind === "move" && <Coils springs={item.springs} equipment={plan.equipment} />}
      {item.kind === "move" && isMoved(item) && <span className={styles.pattern}>{placeMark(item)}</span>}
      {move && <span className={styles.pattern}>{move.pattern}</span>}
      {item.kind === "move" && item.locked && <span className={styles.pattern}>locked</span>}
      {item.kind === "move" && holdMarks(plan, item).map((mark) => <HoldSign key={mark.words} mark={mark} />)}
      {talkOver > 0 && <span className={styles.tooMuch}>{plainNumber(talkOver)} s too much talk</span>}
      {marks && marks.must > 0 && <span className={styles.markMust}>{marks.must} must fix</span>}
      {marks && marks.look > 0 && <span className={styles.markLook}>{marks.look} look again</span>}
      {marks && marks.threads > 0 && <span className={styles.mark}>{plural(marks.threads, "thread")}</span>}
      {people.map((name) => (
        <span key={name} className={styles.person}>
          {name}
        </span>
      ))}
    </>
  );
}

/** Starting away from the usual place changes the load as a spring does, so it is shown beside the springs. */
const isMoved = (item: MoveItem): boolean => (item.offsetMm ?? 0) !== 0;
const placeMark = ({ offsetMm = 0 }: MoveItem): string =>
  `${plainNumber(Math.abs(offsetMm) / 10)} cm ${offsetMm > 0 ? "further" : "nearer"}`;

/** The item's shape shows its side as well: rounded at the left or at the right. */
function SideMark({ item }: { item: MoveItem }) {
  if (item.side === "both") return null;
  return (
    <span className={styles.side} data-side={item.side}>
      {item.side}
    </span>
  );
}

/** Talk as ink along the right edge, as far down as the talk lasts; dark and hatched when it does not fit. */
function Ink({ share }: { share: number | null }) {
  if (share === null) return null;
  const over = share > 1;
  return (
    <span className={styles.ink} data-over={over || undefined} aria-hidden="true">
      <span style={{ height: `${Math.min(1, share) * 100}%`, opacity: over ? 1 : 0.45 + share * 0.5 }} />
    </span>
  );
}

function Notch({ segment, headsUp }: { segment: RailSegment; headsUp: number }) {
  const top = notchOffset(segment, headsUp);
  return top === null ? null : <span className={styles.notch} style={{ top }} aria-hidden="true" />;
}

/** For mouse and finger only: the keyboard has keys for it, so a screen reader does not come by them. */
function Grips({ item, onGripDown }: Pick<ItemOnRailProps, "item" | "onGripDown">) {
  const grab = (kind: "end" | "place") => (event: PointerEvent) => {
    event.stopPropagation();
    onGripDown(kind, item, event);
  };
  return (
    <>
      <span className={styles.hanger} aria-hidden="true" onPointerDown={grab("place")} />
      {item.kind !== "heading" && <span className={styles.end} aria-hidden="true" onPointerDown={grab("end")} />}
    </>
  );
}
