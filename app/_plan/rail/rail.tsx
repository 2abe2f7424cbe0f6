"use client";
/**
 * The class on its rail: two steel lines of time from which every item hangs. A listbox for keyboard and screen reader,
 * a thing to pull at for hands. Where everything stands is worked out in `lib/rail`.
 */
import { useEffect, useMemo, useRef, useState } from "react";
import { clockTime } from "#lib/plan/format.ts";
import { headSeconds } from "#lib/plan/lookup.ts";
import { type RailItem as LaidItem, layoutRail, type RailLayout } from "#lib/rail/layout.ts";
import { talkShare } from "#lib/talk/talk.ts";
import { talkOver } from "#lib/talk/talk-words.ts";
import type { PlanSession } from "../session.ts";
import type { SessionSnapshot } from "../session-types.ts";
import styles from "./rail.module.css";
import { RailGround } from "./rail-ground.tsx";
import { type ItemMarks, itemLabel, RailItem } from "./rail-item.tsx";
import { useNeeds } from "./use-needs.ts";
import { type Preview, type RailDrag, useRailDrag } from "./use-rail-drag.ts";
import { type RailKeyActs, useRailKeys } from "./use-rail-keys.ts";

export interface RailProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  /** Pixels a second. */
  readonly scale: number;
  readonly marks: ReadonlyMap<string, ItemMarks>;
  readonly acts: RailKeyActs;
  /** An item was pressed: on a small screen its panel opens. */
  readonly onPick: (id: string) => void;
  /** Told where everything stands, so that the margin can stand at the same height. */
  readonly onLayout: (layout: RailLayout) => void;
}

export function Rail(props: RailProps) {
  const { session, snap, scale, onLayout } = props;
  const { needs, measure } = useNeeds();
  const laid = useMemo(() => laidItems(snap, null), [snap]);
  const still = useMemo(
    () => layoutRail({ ...laid, lengthSeconds: snap.plan.lengthSeconds, scale, needs }),
    [laid, snap.plan.lengthSeconds, scale, needs],
  );
  const drag = useRailDrag(session, snap.plan, still, scale);
  const layout = useMemo(
    () => previewLayout({ snap, still, scale, needs }, drag.preview),
    [snap, still, scale, needs, drag.preview],
  );
  const onKeyDown = useRailKeys(session, props.acts);
  const list = useRef<HTMLDivElement>(null);
  useFocusFollows(list, snap.selectedId);
  useEffect(() => onLayout(layout), [layout, onLayout]);

  return (
    <div className={styles.rail} style={{ height: layout.height }}>
      <RailGround snap={snap} layout={layout} measure={measure} preview={drag.preview} />
      <div
        ref={list}
        role="listbox"
        aria-label="The class, item by item"
        aria-describedby="rail-keys-hint"
        tabIndex={snap.plan.items.length === 0 ? 0 : -1}
        className={styles.list}
        onKeyDown={onKeyDown}
      >
        <Items {...props} layout={layout} drag={drag} measure={measure} />
      </div>
      <p id="rail-keys-hint" className="visually-hidden">
        Arrow keys choose, Alt and arrow keys move, plus and minus change the seconds, Enter opens, question mark lists
        all keys.
      </p>
    </div>
  );
}

interface ItemsProps extends RailProps {
  readonly layout: RailLayout;
  readonly drag: RailDrag;
  readonly measure: (key: string) => (element: HTMLElement | null) => void;
}

function Items({ session, snap, layout, drag, measure, marks, onPick }: ItemsProps) {
  const people = useMemo(() => peopleByItem(snap), [snap]);
  const segments = useMemo(() => new Map(layout.segments.map((s) => [s.key, s])), [layout]);
  const headsUp = headSeconds(snap.plan, "headsUpSeconds");
  const first = snap.plan.items[0]?.id;
  const pick = useRef((id: string) => id);
  pick.current = (id) => {
    if (!drag.wasDrag()) onPick(id);
    return id;
  };
  const [stable] = useState(() => (id: string) => void pick.current(id));
  const grip = useRef(drag.onGripDown);
  grip.current = drag.onGripDown;
  const [stableGrip] = useState((): RailDrag["onGripDown"] => (kind, item, event) => grip.current(kind, item, event));

  return snap.plan.items.map((item, i) => {
    const segment = segments.get(item.id);
    const row = snap.rows[i];
    if (!segment || !row) return null;
    const shown = shownSeconds(item, drag.preview);
    const talk = snap.talk.get(item.id);
    return (
      <RailItem
        key={item.id}
        item={shown}
        plan={snap.plan}
        segment={segment}
        headsUp={headsUp}
        talk={talk ? talkShare(talk) : null}
        talkOver={talk ? talkOver(talk) : 0}
        marks={marks.get(item.id)}
        people={people.get(item.id) ?? NOBODY}
        selected={snap.selectedId === item.id}
        tabbable={snap.selectedId === null ? item.id === first : snap.selectedId === item.id}
        editable={session.canWrite}
        dragged={drag.preview?.kind === "place" && drag.preview.id === item.id ? drag.preview.dy : null}
        label={itemLabel(snap.plan, item, { start: clockTime(row.start), reps: row.reps, talk })}
        measure={measure(item.id)}
        onGripDown={stableGrip}
        onPick={stable}
      />
    );
  });
}

const NOBODY: readonly string[] = [];

function shownSeconds<T extends SessionSnapshot["plan"]["items"][number]>(item: T, preview: Preview | null): T {
  return preview?.kind === "end" && preview.id === item.id ? { ...item, seconds: preview.seconds } : item;
}

/**
 * Keyboard focus goes with the selection while it is in the rail, also when the item it was on has just gone, and never
 * takes it from anywhere else. An item chosen from elsewhere is brought into view.
 */
function useFocusFollows(list: React.RefObject<HTMLDivElement | null>, selectedId: string | null): void {
  const wasInside = useRef(false);
  useEffect(() => {
    const note = (event: FocusEvent) => {
      wasInside.current = event.target instanceof Node && list.current?.contains(event.target) === true;
    };
    addEventListener("focusin", note);
    return () => removeEventListener("focusin", note);
  }, [list]);
  useEffect(() => {
    const box = list.current;
    if (!box || selectedId === null) return;
    const option = box.querySelector<HTMLElement>(`[data-item="${CSS.escape(selectedId)}"]`);
    const focusIsFree = document.activeElement === document.body && wasInside.current;
    if (focusIsFree || box.contains(document.activeElement)) option?.focus({ preventScroll: true });
    option?.scrollIntoView({ block: "nearest" });
  }, [list, selectedId]);
}

function laidItems(snap: SessionSnapshot, preview: Preview | null): { items: LaidItem[]; total: number } {
  let shift = 0;
  const items = snap.plan.items.flatMap((item, i): LaidItem[] => {
    const row = snap.rows[i];
    if (!row) return [];
    const from = shift;
    if (preview?.kind === "end" && preview.id === item.id && item.kind !== "heading") {
      shift += preview.seconds - item.seconds;
    }
    const times = { transitionFrom: row.transitionFrom + from, start: row.start + from, end: row.end + shift };
    return [{ id: item.id, kind: item.kind, ...times }];
  });
  return { items, total: snap.total + shift };
}

interface Base {
  readonly snap: SessionSnapshot;
  readonly still: RailLayout;
  readonly scale: number;
  readonly needs: Readonly<Record<string, number>>;
}

function previewLayout({ snap, still, scale, needs }: Base, preview: Preview | null): RailLayout {
  if (preview?.kind !== "end") return still;
  return layoutRail({ ...laidItems(snap, preview), lengthSeconds: snap.plan.lengthSeconds, scale, needs });
}

function peopleByItem(snap: SessionSnapshot): ReadonlyMap<string, readonly string[]> {
  const map = new Map<string, string[]>();
  for (const place of snap.places) {
    if (place.itemId === null) continue;
    const names = map.get(place.itemId) ?? [];
    if (!names.includes(place.name)) map.set(place.itemId, [...names, place.name]);
  }
  return map;
}
