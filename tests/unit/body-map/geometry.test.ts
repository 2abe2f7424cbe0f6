/** The drawing holds together: both halves alike, every group inside the body and beside the others, none too small to point at. */
import { describe, expect, it } from "vitest";
import { type BodyLayout, bodyLines, bodyOutline, groupRegions, SEEN_FROM } from "#lib/body-map/body.ts";
import { type MapPoint, pointsOn } from "#lib/body-map/lines/curve.ts";
import { groupNear, isInside } from "#lib/body-map/nearest.ts";
import { BODY_VIEWS, type BodyView } from "#lib/body-map/views.ts";
import { GROUPS, type Group } from "#lib/plan/schema.ts";

const LAYOUTS: readonly BodyLayout[] = ["standing", "lying"];
const each = LAYOUTS.flatMap((layout) => SEEN_FROM.map((side) => ({ layout, side })));

const ringsOf = (side: (typeof SEEN_FROM)[number], layout: BodyLayout) =>
  groupRegions(side, layout).map(({ group, parts }) => ({ group, rings: parts.map((part) => pointsOn(part)) }));

/** Area within a closed line, square thousandths of the stature. */
function areaOf(ring: readonly MapPoint[]): number {
  let twice = 0;
  let [x0, y0] = ring.at(-1) ?? [0, 0];
  for (const [x, y] of ring) {
    twice += x0 * y - x * y0;
    [x0, y0] = [x, y];
  }
  return Math.abs(twice) / 2;
}

describe("the person", () => {
  it.each(LAYOUTS)("has the same half on the left and on the right, %s", (layout) => {
    const ring = pointsOn(bodyOutline(layout));
    for (const [x, y] of ring) {
      const away = Math.min(...ring.map(([a, b]) => Math.hypot(a + x, b - y)));
      // Points lie a bend's eighth apart, mirrored ones fall between the others.
      expect(away).toBeLessThan(0.01);
    }
  });

  it.each(LAYOUTS)("is drawn within its frame, %s", (layout) => {
    const ring = pointsOn(bodyOutline(layout));
    const [wide, high] = [Math.max(...ring.map(([x]) => x)), Math.max(...ring.map(([, y]) => y))];
    const frame = BODY_VIEWS[layout][0]?.frame;
    const [across, along] = layout === "standing" ? [frame?.width, frame?.height] : [frame?.height, frame?.width];
    expect(2 * wide).toBeLessThan((across ?? 0) - 4);
    expect(2 * wide).toBeGreaterThan((across ?? 0) - 24);
    expect(high).toBeLessThan((along ?? 0) - 4);
  });

  it.each(each)("keeps the lines between inside the outline, $layout $side", ({ layout, side }) => {
    const outline = pointsOn(bodyOutline(layout));
    const nearest = ([x, y]: MapPoint) => Math.min(...outline.map(([a, b]) => Math.hypot(a - x, b - y)));
    for (const line of bodyLines(side, layout))
      for (const point of pointsOn(line)) expect(isInside(point, outline) || nearest(point) < 5).toBe(true);
  });
});

describe("the groups", () => {
  it("are all seen, from the front or the back when standing, and all at once when lying", () => {
    const standing = new Set(SEEN_FROM.flatMap((side) => groupRegions(side, "standing").map(({ group }) => group)));
    expect(GROUPS.filter((group) => !standing.has(group))).toEqual([]);
    const lying = new Set(BODY_VIEWS.lying.flatMap(({ regions }) => regions.map(({ group }) => group)));
    expect(GROUPS.filter((group) => !lying.has(group))).toEqual([]);
  });

  it.each(each)("lie inside the outline, $layout $side", ({ layout, side }) => {
    const outline = pointsOn(bodyOutline(layout));
    const outside = ringsOf(side, layout).flatMap(({ group, rings }) =>
      rings.flatMap((ring) =>
        ring.filter((point) => !isInside(point, outline)).map((point) => `${group} ${point.map(Math.round)}`),
      ),
    );
    expect(outside).toEqual([]);
  });

  it.each(each)("lie beside each other, $layout $side", ({ layout, side }) => {
    const regions = ringsOf(side, layout);
    let shared = 0;
    let covered = 0;
    for (let x = 0; x < 220; x += 4)
      for (let y = 100; y < 1000; y += 4) {
        const here = regions.filter(({ rings }) => rings.some((ring) => isInside([x + 0.5, y + 0.5], ring)));
        covered += Math.min(1, here.length);
        shared += here.length > 1 ? 1 : 0;
      }
    expect(covered).toBeGreaterThan(1500);
    expect(shared / covered).toBeLessThan(0.002);
  });

  it("have the same parts on both halves", () => {
    for (const { regions } of BODY_VIEWS.standing)
      for (const { parts } of regions) {
        const areas = parts.map((part) => areaOf(pointsOn(part)));
        const middles = parts.map((part) => pointsOn(part).reduce((sum, [x]) => sum + x, 0));
        expect(parts.length % 2).toBe(0);
        for (let i = 0; i < parts.length; i += 2) {
          expect(areas[i]).toBeCloseTo(areas[i + 1] ?? 0, 6);
          expect(middles[i]).toBeCloseTo(-(middles[i + 1] ?? 0), 6);
        }
      }
  });
});

/** WCAG 2.2, 2.5.8 Target Size (Minimum): 24 by 24 CSS pixels. */
const TARGET_PX = 24;
/** How wide a standing figure is, px (app/_body-map/body-map.module.css), and how near to a region counts. */
const [WIDTH_PX, REACH_PX] = [176, 14];

function pixelsFor(view: BodyView): Map<Group, number> {
  const { x, y, width, height } = view.frame;
  const scale = width / WIDTH_PX;
  const found = new Map<Group, number>();
  for (let px = 0; px < WIDTH_PX; px += 4)
    for (let py = 0; py < height / scale; py += 4) {
      const among = new Set(GROUPS);
      const group = groupNear(view, [x + px * scale, y + py * scale], { reach: REACH_PX * scale, among });
      if (group) found.set(group, (found.get(group) ?? 0) + 16);
    }
  return found;
}

describe("pointing", () => {
  it("finds each group on as many pixels as a target needs, though all work", () => {
    const views = BODY_VIEWS.standing.map(pixelsFor);
    for (const group of GROUPS) {
      const most = Math.max(...views.map((pixels) => pixels.get(group) ?? 0));
      expect(most, group).toBeGreaterThanOrEqual(TARGET_PX * TARGET_PX);
    }
  });

  it("means the group under the pointer before one beside it, only those that are asked, and nothing far from all", () => {
    const [front] = BODY_VIEWS.standing;
    if (!front) throw new Error("no front");
    const ask = (point: MapPoint, among: readonly Group[]) =>
      groupNear(front, point, { reach: 30, among: new Set(among) });
    expect(ask([50, 235], GROUPS)).toBe("chest");
    expect(ask([-50, 235], GROUPS)).toBe("chest");
    expect(ask([50, 235], ["biceps"])).toBeNull();
    expect(ask([0, 60], GROUPS)).toBeNull();
  });
});
