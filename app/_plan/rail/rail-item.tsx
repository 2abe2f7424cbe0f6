"use client";
/** One item on the rail: as tall as its time, with its name, seconds, springs, talk as ink and heads-up as a notch. */
import { memo, type PointerEvent } from "react";
import { HoldSign, holdMarks } from "#app/_order/hold-sign.tsx";
import { offsetWords, plainNumber, plural, repsWords, springWords } from "#lib/plan/format.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { notchOffset, type RailSegment } from "#lib/rail/layout.ts";
import type { ItemTalk } from "#lib/talk/talk.ts";
import { talkWords } from "#lib/talk/talk-words.ts";
import { Coils } from "../coil.tsx";
import { Seconds } from "../seconds.tsx";
import { nameOf, tintOf } from "../words.ts";
import styles from "./rail.module.css";

export interface ItemMarks {
  readonly must: number;
  readonly look: number;
  readonly threads: number;
}

export interface RailItemProps {
  readonly item: PlanItem;
  readonly plan: Plan;
  readonly segment: RailSegment;
  readonly headsUp: number;
  /** Seconds of talk in the item divided by the seconds there are; null when nothing is said. */
  readonly talk: number | null;
  /** Seconds by which there is more to say than time; 0 when it fits. */
  readonly talkOver: number;
  readonly marks: ItemMarks | undefined;
  /** Names of others who are on it. */
  readonly people: readonly string[];
  readonly selected: boolean;
  readonly tabbable: boolean;
  readonly editable: boolean;
  /** Pixels the item hangs away from its place while it is dragged. */
  readonly dragged: number | null;
  readonly label: string;
  readonly measure: (element: HTMLElement | null) => void;
  readonly onGripDown: (kind: "end" | "place", item: PlanItem, event: PointerEvent) => void;
  readonly onPick: (id: string) => void;
}

/** Below this height the two lines of an item stand side by side. */
const FLAT_PX = 60;

export const RailItem = memo(function RailItem(props: RailItemProps) {
  const { item, plan, segment, selected, editable, dragged } = props;
  const move = item.kind === "move" ? moveOf(plan, item) : undefined;
  const shape = item.kind === "move" ? item.side : "both";
  const flat = segment.height < FLAT_PX || item.kind === "heading";
  const place = { top: segment.top + (dragged ?? 0), height: segment.height };
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the listbox around it answers the keys
    <div
      role="option"
      id={`rail-${item.id}`}
      data-item={item.id}
      aria-selected={selected}
      tabIndex={props.tabbable ? 0 : -1}
      className={styles.item}
      data-kind={item.kind}
      data-shape={shape}
      data-tint={item.kind === "move" ? tintOf(move) : item.kind}
      data-flat={flat || undefined}
      data-selected={selected || undefined}
      data-dragged={dragged !== null || undefined}
      data-editable={editable || undefined}
      style={place}
      onClick={() => props.onPick(item.id)}
      onPointerDown={(event) => event.pointerType === "mouse" && props.onGripDown("place", item, event)}
    >
      {/* The spoken name says more than the eye needs: it stands in the content, and what is seen is not read twice. */}
      <span className="visually-hidden">{props.label}</span>
      <div className={styles.body} ref={props.measure} aria-hidden="true">
        <span className={styles.name}>
          {nameOf(plan, item)}
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

function Meta({ item, plan, marks, people, talkOver }: RailItemProps) {
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

/** A starting place that is not the usual one changes the load as a spring does: it stands beside the springs. */
const isMoved = (item: MoveItem): boolean => (item.offsetMm ?? 0) !== 0;
const placeMark = ({ offsetMm = 0 }: MoveItem): string =>
  `${plainNumber(Math.abs(offsetMm) / 10)} cm ${offsetMm > 0 ? "further" : "nearer"}`;

/** Left is rounded at the left, right at the right; the word says it too. */
function SideMark({ item }: { item: MoveItem }) {
  if (item.side === "both") return null;
  return (
    <span className={styles.side} data-side={item.side}>
      {item.side}
    </span>
  );
}

/** Talk as ink along the right edge: as far down as the talk reaches; hatched and dark when it does not fit. */
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

/** For hands only; the keyboard has its own way. Not in the tree that is read aloud. */
function Grips({ item, onGripDown }: Pick<RailItemProps, "item" | "onGripDown">) {
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

interface LabelFacts {
  readonly start: string;
  readonly reps: number | null;
  readonly talk: ItemTalk | undefined;
}

/** What a screen reader hears of an item. */
export function itemLabel(plan: Plan, item: PlanItem, row: LabelFacts): string {
  const parts = [item.kind === "heading" ? `Heading: ${nameOf(plan, item)}` : nameOf(plan, item)];
  if (item.kind === "move" && item.side !== "both") parts.push(item.side);
  if (item.kind !== "heading") parts.push(`${plainNumber(item.seconds)} seconds from ${row.start}`);
  if (item.kind === "move") parts.push(springWords(plan.equipment, item.springs));
  if (item.kind === "move" && isMoved(item)) parts.push(`starting ${offsetWords(item.offsetMm ?? 0)}`);
  const pattern = item.kind === "move" ? moveOf(plan, item)?.pattern : undefined;
  if (pattern) parts.push(pattern);
  if (row.reps !== null) parts.push(repsWords(row.reps));
  if (row.talk) parts.push(talkWords(row.talk));
  if (item.kind === "move" && item.locked) parts.push("locked");
  if (item.kind === "move") parts.push(...holdMarks(plan, item).map((mark) => mark.words));
  return parts.join(", ");
}
