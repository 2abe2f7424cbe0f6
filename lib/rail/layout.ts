/**
 * Where everything stands on the rail. Time runs down. An item is as tall as its seconds at the chosen scale, but never
 * too small for its text, so the axis is linear only within a segment.
 * Segments follow each other without gaps or overlaps, so nothing can collide.
 * Lengths are CSS pixels, times are seconds from the start of the class.
 */
export type SegmentKind = "opening" | "heading" | "gap" | "move" | "pause" | "closing" | "free";

export interface RailItem {
  readonly id: string;
  readonly kind: "heading" | "pause" | "move";
  /** When the change into it begins, when it begins and when it ends. */
  readonly transitionFrom: number;
  readonly start: number;
  readonly end: number;
}

export interface RailInput {
  readonly items: readonly RailItem[];
  readonly lengthSeconds: number;
  /** Opening and closing included. */
  readonly total: number;
  /** Pixels a second. */
  readonly scale: number;
  /** Pixels that a segment's text needs, by segment key. */
  readonly needs: Readonly<Record<string, number>>;
}

export interface RailSegment {
  /** `opening`, `closing`, `free`, the item's id, or `gap:` and the id of the item the change leads into. */
  readonly key: string;
  readonly kind: SegmentKind;
  readonly item: string | null;
  readonly from: number;
  readonly to: number;
  readonly top: number;
  readonly height: number;
}

export interface RailLayout {
  readonly segments: readonly RailSegment[];
  readonly height: number;
  /** Where the class should end. */
  readonly lengthY: number;
}

/** The least height of a segment, px; a gap without time still separates items. */
export const LEAST_HEIGHT_PX: Readonly<Record<SegmentKind, number>> = {
  opening: 20,
  heading: 34,
  gap: 6,
  move: 44,
  pause: 44,
  closing: 20,
  free: 28,
};

/** Where nobody works, time takes no more room than this, px: the first plate is soon in sight. */
export const MOST_HEIGHT_PX: Readonly<Partial<Record<SegmentKind, number>>> = { opening: 20, closing: 20, free: 120 };

const gapKey = (id: string): string => `gap:${id}`;

type Bare = Omit<RailSegment, "top" | "height">;

export function layoutRail(input: RailInput): RailLayout {
  let top = 0;
  const segments = bareSegments(input).map((bare): RailSegment => {
    const height = Math.max(
      LEAST_HEIGHT_PX[bare.kind],
      input.needs[bare.key] ?? 0,
      Math.min(MOST_HEIGHT_PX[bare.kind] ?? Number.POSITIVE_INFINITY, (bare.to - bare.from) * input.scale),
    );
    const segment = { ...bare, top, height };
    top += height;
    return segment;
  });
  const layout = { segments, height: top, lengthY: 0 };
  return { ...layout, lengthY: yOfSecond(layout, input.lengthSeconds) };
}

function bareSegments({ items, lengthSeconds, total }: RailInput): Bare[] {
  const firstFrom = items[0]?.transitionFrom ?? items[0]?.start;
  const lastEnd = items.at(-1)?.end;
  const openingEnd = firstFrom ?? total;
  const first = firstMove(items);
  const list: Bare[] = [{ key: "opening", kind: "opening", item: null, from: 0, to: openingEnd }];
  for (const item of items) {
    const changes = item.start > item.transitionFrom || (item.kind === "move" && item !== first);
    if (changes) {
      list.push({ key: gapKey(item.id), kind: "gap", item: item.id, from: item.transitionFrom, to: item.start });
    }
    list.push({ key: item.id, kind: item.kind, item: item.id, from: item.start, to: item.end });
  }
  if (lastEnd !== undefined) list.push({ key: "closing", kind: "closing", item: null, from: lastEnd, to: total });
  if (total < lengthSeconds) list.push({ key: "free", kind: "free", item: null, from: total, to: lengthSeconds });
  return list;
}

/** The first move of a class is set up during the opening, so there is no change into it. */
const firstMove = (items: readonly RailItem[]) => items.find((item) => item.kind === "move");

/** The y of a time: 0 before the class, the foot of the rail after it. */
export function yOfSecond(layout: Pick<RailLayout, "segments" | "height">, second: number): number {
  if (second <= 0) return 0;
  for (const s of layout.segments) {
    if (second < s.to) return s.top + (s.height * (second - s.from)) / (s.to - s.from);
  }
  const last = layout.segments.findLast((s) => s.to === second);
  return last ? last.top + last.height : layout.height;
}

/** The segment of an item, if it is on the rail. */
export const segmentOf = (layout: RailLayout, id: string): RailSegment | undefined =>
  layout.segments.find((s) => s.key === id);

/** Height inside an item at which its heads-up is called; null when the item is too short for one. */
export function notchOffset(segment: RailSegment, headsUpSeconds: number): number | null {
  const seconds = segment.to - segment.from;
  if (headsUpSeconds <= 0 || headsUpSeconds >= seconds) return null;
  return segment.height * (1 - headsUpSeconds / seconds);
}
