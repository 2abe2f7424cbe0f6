/**
 * The drawn person against published lengths: Drillis & Contini 1966, as drawn in Winter, Biomechanics and Motor Control of Human
 * Movement, fig. 4.1, parts of stature (quoted from memory). Where a group lies: which bones its muscles run along and over
 * which joints, after Gray, Anatomy of the Human Body, 1918 (from memory).
 */
import { describe, expect, it } from "vitest";
import { bodyOutline, groupRegions } from "#lib/body-map/body.ts";
import { type MapPoint, pointsOn } from "#lib/body-map/lines/curve.ts";
import type { Group } from "#lib/plan/schema.ts";

/** Parts of stature over the ground. */
const HEIGHT = { ankle: 0.039, knee: 0.285, hip: 0.53, shoulder: 0.818, elbow: 0.63, wrist: 0.485, fingertip: 0.377 };
/** Thousandths from the crown. */
const down = (part: number) => 1000 * (1 - part);
const outline = pointsOn(bodyOutline("standing"), 24);

/** Where the outline crosses that height at x above 0, from the middle outwards. */
function crossings(y: number): number[] {
  const found: number[] = [];
  outline.forEach(([x1, y1], i) => {
    const [x0, y0] = outline.at(i - 1) ?? [0, 0];
    if (y0 > y !== y1 > y) found.push(x0 + ((y - y0) * (x1 - x0)) / (y1 - y0));
  });
  return found.filter((x) => x > 0).sort((a, b) => a - b);
}
/** Height at which what lies between two crossings is narrowest. */
function narrowest([from, to]: readonly [number, number], [inner, outer]: readonly [number, number]): number {
  const widths = Array.from({ length: to - from }, (_, i) => {
    const at = crossings(from + i + 0.5);
    return { y: from + i, width: (at[outer] ?? 0) - (at[inner] ?? 0) };
  });
  return widths.reduce((least, one) => (one.width < least.width ? one : least)).y;
}

describe("the person", () => {
  it("stands on soles at full stature", () => {
    expect(Math.max(...outline.map(([, y]) => y))).toBeCloseTo(1000, -1);
  });
  it("has its fingertips, wrists and ankles at the published heights", () => {
    const arm = outline.filter(([x]) => x > 150);
    expect(Math.abs(Math.max(...arm.map(([, y]) => y)) - down(HEIGHT.fingertip))).toBeLessThan(10);
    expect(Math.abs(narrowest([470, 540], [1, 2]) - down(HEIGHT.wrist))).toBeLessThan(15);
    expect(Math.abs(narrowest([900, 970], [0, 1]) - down(HEIGHT.ankle))).toBeLessThan(25);
  });
  it("is as broad at shoulders and hips as published, within a twentieth", () => {
    const [hip = 0] = crossings(down(HEIGHT.hip));
    expect((2 * hip) / 191).toBeGreaterThan(0.95);
    expect((2 * hip) / 191).toBeLessThan(1.05);
    const shoulder = crossings(down(HEIGHT.shoulder)).at(-1) ?? 0;
    expect(shoulder / 129).toBeGreaterThan(0.95);
    expect(shoulder / 129).toBeLessThan(1.05);
  });
});

const JOINT = {
  shoulder: down(HEIGHT.shoulder),
  elbow: down(HEIGHT.elbow),
  wrist: down(HEIGHT.wrist),
  hip: down(HEIGHT.hip),
  knee: down(HEIGHT.knee),
  ankle: down(HEIGHT.ankle),
};
const pointsOf = (side: "front" | "back", group: Group): MapPoint[] =>
  groupRegions(side, "standing")
    .filter((region) => region.group === group)
    .flatMap(({ parts }) => parts.flatMap((part) => pointsOn(part)));

/** From which joint to which a group's bellies lie, and where they are seen. A region may pass a joint by a hand's breadth, 50. */
const ALONG: readonly (readonly [Group, "front" | "back", keyof typeof JOINT, keyof typeof JOINT])[] = [
  ["biceps", "front", "shoulder", "elbow"],
  ["triceps", "back", "shoulder", "elbow"],
  ["forearms", "front", "elbow", "wrist"],
  ["forearms", "back", "elbow", "wrist"],
  ["quadriceps", "front", "hip", "knee"],
  ["hamstrings", "back", "hip", "knee"],
  ["adductors", "front", "hip", "knee"],
  ["calves", "back", "knee", "ankle"],
  ["abdominals", "front", "shoulder", "hip"],
  ["lower-back", "back", "shoulder", "hip"],
];

describe("where the groups lie", () => {
  it.each(ALONG)("%s, %s: between %s and %s", (group, side, upper, lower) => {
    const ys = pointsOf(side, group).map(([, y]) => y);
    expect(Math.min(...ys)).toBeGreaterThan(JOINT[upper] - 20);
    expect(Math.max(...ys)).toBeLessThan(JOINT[lower] + 50);
  });
  it.each([
    ["shoulders", "front", "shoulder"],
    ["hip-flexors", "front", "hip"],
    ["abductors", "front", "hip"],
    ["abductors", "back", "hip"],
    ["glutes", "back", "hip"],
  ] as const)("%s, %s: over the %s", (group, side, joint) => {
    const ys = pointsOf(side, group).map(([, y]) => y);
    expect(Math.min(...ys)).toBeLessThan(JOINT[joint] + 5);
    expect(Math.max(...ys)).toBeGreaterThan(JOINT[joint] + 5);
  });
  it("adductors inside, abductors outside, the straight muscles of the belly between the slanting ones", () => {
    const middle = (side: "front" | "back", group: Group) => {
      const xs = pointsOf(side, group).map(([x]) => x);
      return xs.reduce((sum, x) => sum + x, 0) / xs.length;
    };
    expect(middle("front", "adductors")).toBeLessThan(middle("front", "quadriceps"));
    expect(middle("front", "quadriceps")).toBeLessThan(middle("front", "abductors"));
    expect(middle("front", "abdominals")).toBeLessThan(middle("front", "obliques"));
    expect(middle("back", "lower-back")).toBeLessThan(middle("back", "obliques"));
    expect(middle("front", "chest")).toBeLessThan(middle("front", "shoulders"));
  });
});
