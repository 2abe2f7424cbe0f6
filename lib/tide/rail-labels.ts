/**
 * Where the words of a day's classes stand on its rail: each right of its mark, or together with those of its neighbour where
 * they would meet. Words get shorter before they are put together, and are never cut off.
 */
import type { LabelPart, Measure, RailLabel } from "./types.ts";

/** One class to be named: its mark, and its words from the longest to the shortest. */
export interface ToLabel {
  readonly x0: number;
  readonly x1: number;
  readonly ways: readonly LabelPart[];
}

export interface LabelRoom {
  readonly width: number;
  readonly measure: Measure;
}

const GAP = 4;
export const PLUS = " + ";

/** Px between the parts of a label and its classes. */
export function labelWidth(label: Pick<RailLabel, "parts" | "inShort">, measure: Measure): number {
  if (label.inShort !== undefined) return measure(label.inShort, false);
  const parts = label.parts.map(
    ({ theme, who, open, chosen }) =>
      measure(theme, chosen) + (who ? measure(` ${who}`, false) : 0) + (open ? measure(` ${open}`, true) : 0),
  );
  return parts.reduce((a, b) => a + b, 0) + (parts.length - 1) * measure(PLUS, false);
}

interface Cluster {
  readonly members: readonly ToLabel[];
}

/** Words beside the marks, on their line. In order of place; `classes` in order of time. */
export function placeLabels(classes: readonly ToLabel[], room: LabelRoom): RailLabel[] {
  let clusters: Cluster[] = classes.map((one) => ({ members: [one] }));
  for (;;) {
    const placed = tryAll(clusters, room);
    if (placed.stuck === null) return placed.labels;
    clusters = merged(clusters, placed.stuck);
  }
}

/** Two clusters as one: the one that does not fit and the next, or the one before. */
function merged(clusters: readonly Cluster[], stuck: number): Cluster[] {
  const at = stuck < clusters.length - 1 ? stuck : stuck - 1;
  const [a, b] = [clusters[at], clusters[at + 1]];
  if (!a || !b) return [...clusters];
  return [...clusters.slice(0, at), { members: [...a.members, ...b.members] }, ...clusters.slice(at + 2)];
}

function tryAll(clusters: readonly Cluster[], room: LabelRoom): { labels: RailLabel[]; stuck: number | null } {
  const labels: RailLabel[] = [];
  let edge = 0;
  for (const [i, cluster] of clusters.entries()) {
    const next = clusters[i + 1];
    const limit = next ? starts(next) - GAP : room.width;
    const label = placeOne(cluster, { edge, limit }, room);
    if (!label) {
      if (clusters.length > 1) return { labels, stuck: i };
      labels.push(lastResort(cluster, room));
      return { labels, stuck: null };
    }
    labels.push(label);
    edge = Math.max(label.x + label.width, ends(cluster));
  }
  return { labels, stuck: null };
}

const starts = ({ members }: Cluster): number => Math.min(...members.map(({ x0 }) => x0));
const ends = ({ members }: Cluster): number => Math.max(...members.map(({ x1 }) => x1));

interface Between {
  readonly edge: number;
  readonly limit: number;
}

function placeOne(cluster: Cluster, { edge, limit }: Between, room: LabelRoom): RailLabel | null {
  for (const words of waysOf(cluster)) {
    const width = labelWidth(words, room.measure);
    for (const x of [ends(cluster) + GAP, starts(cluster) - GAP - width]) {
      const isLeft = x < starts(cluster);
      const free = isLeft ? starts(cluster) - GAP : limit;
      if (x >= edge + (edge > 0 ? GAP : 0) && x + width <= free) return { ...words, x, width, line: 0 };
    }
  }
  return null;
}

type Words = Pick<RailLabel, "parts" | "inShort">;

function waysOf({ members }: Cluster): Words[] {
  const most = Math.max(...members.map(({ ways }) => ways.length));
  // Together, classes of the chosen regulars are named first, and nobody by the whole name.
  const first = members.length > 1 ? 1 : 0;
  const levels = Array.from({ length: most - first }, (_, i): Words => ({ parts: partsAt(members, i + first) }));
  const one = members.length === 1;
  return one ? levels : [...levels, { parts: partsAt(members, most - 1), inShort: `${members.length} classes` }];
}

function partsAt(members: readonly ToLabel[], level: number): LabelPart[] {
  const parts = members.flatMap(({ ways }) => ways[Math.min(level, ways.length - 1)] ?? []);
  return [...parts.filter(({ chosen }) => chosen), ...parts.filter(({ chosen }) => !chosen)];
}

/** Marks from one end to the other: the number of classes over the widest space between them. */
function lastResort(cluster: Cluster, room: LabelRoom): RailLabel {
  const words = waysOf(cluster).at(-1) ?? { parts: [] };
  const width = labelWidth(words, room.measure);
  const spaces: Between[] = [];
  let edge = 0;
  for (const { x0, x1 } of cluster.members) {
    spaces.push({ edge, limit: x0 });
    edge = Math.max(edge, x1);
  }
  spaces.push({ edge, limit: room.width });
  const widest = spaces.reduce((a, b) => (b.limit - b.edge > a.limit - a.edge ? b : a));
  return { ...words, width, line: 0, x: Math.max(0, Math.min(widest.edge + GAP, room.width - width)) };
}

/** From which of a class's ways on: under the rail nobody is named in full. */
const UNDER = 1;

/** Words under the rail: each begins under its mark, on the first line that has room. */
export function stackLabels(classes: readonly ToLabel[], { width: all, measure }: LabelRoom): RailLabel[] {
  const edges: number[] = [];
  return classes.map(({ x0, ways }) => {
    const fitting = ways.slice(UNDER).find((way) => labelWidth({ parts: [way] }, measure) <= all) ?? ways.at(-1);
    const parts = fitting ? [fitting] : [];
    const width = labelWidth({ parts }, measure);
    const x = Math.max(0, Math.min(x0, all - width));
    const found = edges.findIndex((edge) => edge + GAP * 2 <= x);
    const line = found < 0 ? edges.length : found;
    edges[line] = x + width;
    return { x, width, line, parts };
  });
}
