"use client";
import { useMemo, useRef, useState } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
import type { ChangeMark } from "#app/_session/changes-shown.ts";
import { type HoldMark, holdMarks } from "#app/_session/hold-sign.tsx";
import { nameOf } from "#app/_session/item-words.ts";
import { usePageActs } from "#app/_session/page-acts.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import type { ClockRow } from "#lib/clock/clock.ts";
import type { FirstDraft } from "#lib/draft/first-draft.ts";
/** Every item of the plan, hung in its place on the rail. */
import type { Formats } from "#lib/formats/formats.ts";
import { clockTime } from "#lib/plan/format.ts";
import { headSeconds, moveOf } from "#lib/plan/lookup.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import type { RailSegment } from "#lib/rail/layout.ts";
import { type ItemTalk, talkShare } from "#lib/talk/talk.ts";
import { talkOver } from "#lib/talk/talk-words.ts";
import { useSteady } from "../_parts/use-steady.ts";
import { itemLabel, type LabelFacts } from "./item-label.ts";
import { ItemOnRail } from "./item-on-rail.tsx";
import type { ItemMarks } from "./marks.ts";
import { type RestLine, useRestLines } from "./rest-lines.ts";
import { useSaid } from "./said-stretches.ts";
import type { DragPreview, RailDrag } from "./use-rail-drag.ts";

interface RailItemsProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly marks: ReadonlyMap<string, ItemMarks>;
  readonly changes: ReadonlyMap<string, ChangeMark>;
  readonly draft: FirstDraft;
  /** The items without one here are drawn later. */
  readonly drawn: readonly RailSegment[];
  /** The item whose plate is open. */
  readonly openId: string | undefined;
  readonly drag: RailDrag;
  readonly measure: (key: string) => (element: HTMLElement | null) => void;
}

export function RailItems({ session, snap, drawn, drag, measure, marks, changes, draft, openId }: RailItemsProps) {
  const people = useMemo(() => peopleByItem(snap), [snap]);
  const segments = useMemo(() => new Map(drawn.map((s) => [s.key, s])), [drawn]);
  const headsUp = headSeconds(snap.plan, "headsUpSeconds");
  const tabbableId = snap.selectedId ?? snap.plan.items[0]?.id;
  const f = useFormats();
  const hands = useHands(drag);
  const linesOf = useRestLines(snap, draft);
  const saidIn = useSaid(snap);
  const steady = useSteady();
  return snap.plan.items.map((item, i) => {
    const segment = segments.get(item.id);
    const row = snap.rows[i];
    if (!segment || !row) return null;
    const holds = steady(`holds ${item.id}`, item.kind === "move" ? holdMarks(snap.plan, item) : NO_HOLDS);
    return (
      <ItemOnRail
        key={item.id}
        item={asPreviewed(item, drag.preview)}
        {...factsOf(snap.plan, item)}
        {...{ segment: steady(`place ${item.id}`, segment), headsUp, holds }}
        {...talkOf(snap.talk.get(item.id))}
        marks={steady(`marks ${item.id}`, marks.get(item.id))}
        change={steady(`change ${item.id}`, changes.get(item.id))}
        lines={item.kind === "move" ? linesOf(item) : NO_LINES}
        inDraft={draft.has(item.id)}
        reps={row.reps}
        said={steady(`said ${item.id}`, saidIn(item.id))}
        people={steady(`people ${item.id}`, people.get(item.id) ?? NOBODY)}
        {...{ selected: snap.selectedId === item.id, open: openId === item.id, tabbable: item.id === tabbableId }}
        editable={session.canWrite}
        dragged={draggedBy(item, drag.preview)}
        label={labelOf(snap, item, { row, holds, marks: marks.get(item.id), change: changes.get(item.id) }, f)}
        measure={measure(item.id)}
        {...hands}
      />
    );
  });
}

interface LabelOf extends Pick<LabelFacts, "holds" | "marks" | "change"> {
  readonly row: ClockRow;
}

const labelOf = ({ plan, talk }: SessionSnapshot, item: PlanItem, { row, ...facts }: LabelOf, f: Formats): string =>
  itemLabel(plan, item, { ...facts, start: clockTime(row.start), reps: row.reps, talk: talk.get(item.id) }, f);

/** What a plate takes from its plan. The plan itself is another after every letter, so no plate is given it. */
const factsOf = (plan: Plan, item: PlanItem) => ({
  name: nameOf(plan, item),
  move: item.kind === "move" ? moveOf(plan, item) : undefined,
  equipment: plan.equipment,
});

const talkOf = (talk: ItemTalk | undefined) => ({
  talk: talk ? talkShare(talk) : null,
  talkOver: talk ? talkOver(talk) : 0,
});

const draggedBy = ({ id }: PlanItem, preview: DragPreview | null): number | null =>
  preview?.kind === "place" && preview.id === id ? preview.dy : null;

const NOBODY: readonly string[] = [];
const NO_LINES: readonly RestLine[] = [];
const NO_HOLDS: readonly HoldMark[] = [];

/** What a press on an item does, as functions that never change: an item is drawn again only when something in it did. */
function useHands(drag: RailDrag) {
  const acts = usePageActs();
  const now = useRef({ acts, drag });
  now.current = { acts, drag };
  const [hands] = useState(() => {
    const onGripDown: RailDrag["onGripDown"] = (kind, item, event) => now.current.drag.onGripDown(kind, item, event);
    const onPick = (id: string) => {
      if (!now.current.drag.wasDrag()) now.current.acts.pick(id);
    };
    return { onGripDown, onPick };
  });
  return hands;
}

function asPreviewed<T extends SessionSnapshot["plan"]["items"][number]>(item: T, preview: DragPreview | null): T {
  return preview?.kind === "end" && preview.id === item.id ? { ...item, seconds: preview.seconds } : item;
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
