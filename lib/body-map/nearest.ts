/** Which group a finger or a pointer means. Regions are slimmer than a finger, so what is near counts too. */
import { perValue } from "#lib/memo/per-value.ts";
import type { Group } from "#lib/plan/schema.ts";
import { type MapPoint, pointsOn } from "./lines/curve.ts";
import type { BodyView } from "./views.ts";

type Ring = readonly MapPoint[];
interface Part {
  readonly group: Group;
  readonly ring: Ring;
  /** Left, top, right and bottom, so that most parts are passed over without a look at their line. */
  readonly box: readonly [number, number, number, number];
}

const partsOf = perValue((view: BodyView): readonly Part[] =>
  view.regions.flatMap(({ group, parts }) =>
    parts.map((part) => {
      const ring = pointsOn(part, 6);
      const [xs, ys] = [ring.map(([x]) => x), ring.map(([, y]) => y)];
      return { group, ring, box: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] };
    }),
  ),
);

/**
 * The group at `point`, else the one whose line is nearest within `reach`; null where none is. Only `among` are asked. Units
 * of the view.
 */
export function groupNear(
  view: BodyView,
  point: MapPoint,
  { reach, among }: { readonly reach: number; readonly among: ReadonlySet<Group> },
): Group | null {
  let [best, least] = [null as Group | null, reach];
  for (const { group, ring, box } of partsOf(view)) {
    if (!among.has(group) || isFar(point, box, reach)) continue;
    if (isInside(point, ring)) return group;
    const away = Math.min(...ring.map(([x, y]) => Math.hypot(x - point[0], y - point[1])));
    if (away < least) [best, least] = [group, away];
  }
  return best;
}

const isFar = ([x, y]: MapPoint, [left, top, right, bottom]: Part["box"], reach: number): boolean =>
  x < left - reach || x > right + reach || y < top - reach || y > bottom + reach;

/** By how often a line from the point to the right crosses the ring. */
export function isInside([x, y]: MapPoint, ring: Ring): boolean {
  let inside = false;
  let [x0, y0] = ring.at(-1) ?? [0, 0];
  for (const [x1, y1] of ring) {
    if (y0 > y !== y1 > y && x < x0 + ((y - y0) * (x1 - x0)) / (y1 - y0)) inside = !inside;
    [x0, y0] = [x1, y1];
  }
  return inside;
}
