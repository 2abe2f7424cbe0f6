"use client";
/** One item on the rail: a plate as tall as its time is long, with its window, name, numbers, script at rest, and talk as ink. */
import { memo, type PointerEvent } from "react";
import type { ChangeMark } from "#app/_session/changes-shown.ts";
import { type HoldMark, HoldSign } from "#app/_session/hold-sign.tsx";
import { plainNumber, plural } from "#lib/plan/format.ts";
import type { Move, Plan, PlanItem } from "#lib/plan/schema.ts";
import { notchOffset, type RailSegment } from "#lib/rail/layout.ts";
import shared from "../_parts/plate/plate.module.css";
import { PlateInk, PlateMeta, PlateName, PlateNumbers, PlateSeconds } from "../_parts/plate/plate-words.tsx";
import type { Stretch } from "../_parts/plate/said.ts";
import { tintOf } from "../_parts/plate/tint.ts";
import type { ItemMarks } from "./marks.ts";
import styles from "./plate.module.css";
import { PlateRest } from "./plate-rest.tsx";
import { RailWindow } from "./rail-window.tsx";
import type { RestLine } from "./rest-lines.ts";

interface ItemOnRailProps {
  readonly item: PlanItem;
  readonly name: string;
  /** Its move in the library; undefined for a pause, a heading, or where the plan lacks it. */
  readonly move: Move | undefined;
  readonly equipment: Plan["equipment"];
  readonly holds: readonly HoldMark[];
  readonly segment: RailSegment;
  readonly headsUp: number;
  /** Seconds of talk divided by seconds of the item; null when nothing is said. */
  readonly talk: number | null;
  /** Seconds of talk for which there is no time; 0 when it fits. */
  readonly talkOver: number;
  readonly marks: ItemMarks | undefined;
  readonly change: ChangeMark | undefined;
  readonly lines: readonly RestLine[];
  /** Some of them are only proposed. */
  readonly inDraft: boolean;
  /** Whole repetitions; null for a hold, a pause, a heading. */
  readonly reps: number | null;
  /** When each of its lines is said, as shares of its time. */
  readonly said: readonly Stretch[];
  /** Names of others who are on it. */
  readonly people: readonly string[];
  readonly selected: boolean;
  /** Its plate is open: what it says at rest is there in full. */
  readonly open: boolean;
  readonly tabbable: boolean;
  readonly editable: boolean;
  /** How far the item is from its place while it is dragged, px. */
  readonly dragged: number | null;
  readonly label: string;
  readonly measure: (element: HTMLElement | null) => void;
  readonly onGripDown: (kind: "end" | "place", item: PlanItem, event: PointerEvent) => void;
  readonly onPick: (id: string) => void;
}

export const ItemOnRail = memo(function ItemOnRail(props: ItemOnRailProps) {
  const { item, segment, selected, editable, dragged, open } = props;
  const isMove = item.kind === "move";
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the listbox around it answers the keys
    <div
      role="option"
      id={`rail-${item.id}`}
      data-item={item.id}
      aria-selected={selected}
      tabIndex={props.tabbable ? 0 : -1}
      className={`${shared.plate} ${styles.item}`}
      {...looks(props)}
      style={{ top: segment.top + (dragged ?? 0), height: segment.height }}
      onClick={() => props.onPick(item.id)}
      onPointerDown={(event) => event.pointerType === "mouse" && props.onGripDown("place", item, event)}
    >
      {/* What is read aloud says more than the eye needs; what is seen is not read a second time. */}
      <span className="visually-hidden">{props.label}</span>
      {isMove && <RailWindow {...{ item, open }} move={props.move} />}
      <div className={styles.body} ref={props.measure} aria-hidden="true">
        <div className={styles.head}>
          <PlateName name={props.name} side={isMove ? item.side : undefined} />
          <PlateMeta>
            <Meta {...props} />
          </PlateMeta>
        </div>
        {isMove && !open && <PlateRest lines={props.lines} marks={props.marks} />}
      </div>
      {isMove && <PlateInk said={props.said} over={props.talk !== null && props.talk > 1} />}
      {isMove && <Notch segment={segment} headsUp={props.headsUp} />}
      {props.change && <Gone change={props.change} />}
      {editable && <Grips item={item} onGripDown={props.onGripDown} />}
    </div>
  );
});

/** What the stylesheet draws an item by. */
function looks({ item, move, inDraft, selected, open, editable, dragged }: ItemOnRailProps) {
  return {
    "data-kind": item.kind,
    "data-density": open ? "open" : "rest",
    "data-shape": item.kind === "move" ? item.side : "both",
    "data-tint": item.kind === "move" ? tintOf(move) : item.kind,
    "data-open": open || undefined,
    "data-draft": inDraft || undefined,
    "data-selected": selected || undefined,
    "data-dragged": dragged !== null || undefined,
    "data-editable": editable || undefined,
  };
}

function Meta({ item, equipment, holds, reps, marks, change, people, talkOver }: ItemOnRailProps) {
  const threads = marks?.threads ?? 0;
  const proposals = marks?.proposals ?? 0;
  return (
    <>
      {item.kind !== "heading" && <PlateSeconds value={item.seconds} />}
      {item.kind === "move" && (
        <>
          <PlateNumbers {...{ springs: item.springs, equipment, offsetMm: item.offsetMm ?? 0, reps }} />
          {item.locked && <span>locked</span>}
          {holds.map((mark) => (
            <HoldSign key={mark.words} mark={mark} />
          ))}
        </>
      )}
      {change?.word && (
        <span className={styles.change} data-read={change.read || undefined}>
          {change.word}
          {change.read && ", read"}
        </span>
      )}
      {change && change.goneAbove.length > 0 && <span>removed above: {change.goneAbove.join(", ")}</span>}
      {change && change.goneBelow.length > 0 && <span>removed below: {change.goneBelow.join(", ")}</span>}
      {talkOver > 0 && <span className={styles.tooMuch}>{plainNumber(talkOver)} s too much talk</span>}
      {threads > 0 && <span>{plural(threads, "thread")}</span>}
      {proposals > 0 && <span className={styles.proposed}>{plural(proposals, "proposal")}</span>}
      {people.map((name) => (
        <span key={name} className={styles.person}>
          {name}
        </span>
      ))}
    </>
  );
}

/** Plates that were removed: a thin line where each was. Their names stand in the plate's own words, where nothing else is printed. */
function Gone({ change: { goneAbove, goneBelow } }: { readonly change: ChangeMark }) {
  const line = (names: readonly string[], where: "above" | "below") =>
    names.length > 0 && <span className={styles.gone} data-where={where} aria-hidden="true" />;
  return (
    <>
      {line(goneAbove, "above")}
      {line(goneBelow, "below")}
    </>
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
