/**
 * A person as lines: the outline, the region of each group of muscles and the lines between, one half of each, with the arms
 * as held. Thousandths of the stature; the other half is the mirror image.
 */
import { GROUPS, type Group } from "#lib/plan/schema.ts";
import { type Bend, closedCurve, type Knot, openCurve } from "./lines/curve.ts";
import { BACK, BACK_LINES } from "./shapes/back.ts";
import { FRONT, FRONT_LINES } from "./shapes/front.ts";
import { HAND_LINES } from "./shapes/hand.ts";
import {
  ARM_LINE,
  ARMPIT,
  FLANK_LINE,
  FORK,
  HEAD_LINE,
  LEG_LINE,
  NECK_LINE,
  SHOULDER_JOINT,
} from "./shapes/outline.ts";

export const SEEN_FROM = ["front", "back"] as const;
export type SeenFrom = (typeof SEEN_FROM)[number];

/** Degrees by which the arms are laid closer to the body than they are drawn. */
export const ARMS_IN = { standing: 0, lying: 5 } as const;
export type BodyLayout = keyof typeof ARMS_IN;

/** Groups that go with the arm. */
const ON_ARM: ReadonlySet<Group> = new Set<Group>(["shoulders", "biceps", "triceps", "forearms"]);
/** Above the first height the shoulder stays where it is, below the second all of the arm turns. */
const TURNS = { from: 182, whole: 290 } as const;

/** The whole outline, once round. */
export function bodyOutline(layout: BodyLayout): Bend[] {
  const half = [...HEAD_LINE, ...NECK_LINE, ...held(ARM_LINE, layout), ARMPIT, ...FLANK_LINE, ...LEG_LINE, FORK];
  return closedCurve([...half, ...half.slice(1, -1).reverse().map(mirrored)]);
}

export interface GroupRegion {
  readonly group: Group;
  /** Closed lines on the half with x above 0. */
  readonly parts: readonly (readonly Bend[])[];
}

/** The groups that are seen from that side, in the order of GROUPS. */
export function groupRegions(side: SeenFrom, layout: BodyLayout): GroupRegion[] {
  const shapes = side === "front" ? FRONT : BACK;
  return GROUPS.flatMap((group): GroupRegion[] => {
    const parts = shapes[group];
    return parts
      ? [{ group, parts: parts.map((part) => closedCurve(ON_ARM.has(group) ? held(part, layout) : part)) }]
      : [];
  });
}

/** Lines that make it a person, one half. */
export function bodyLines(side: SeenFrom, layout: BodyLayout): Bend[][] {
  const own = side === "front" ? FRONT_LINES : BACK_LINES;
  return [...own.map(openCurve), ...HAND_LINES.map((line) => openCurve(held(line, layout)))];
}

/** Turned about the shoulder, as far as the layout lays the arms in. */
function held(knots: readonly Knot[], layout: BodyLayout): readonly Knot[] {
  const [x0, y0] = SHOULDER_JOINT;
  return knots.map(([x, y, corner]): Knot => {
    const part = Math.min(1, Math.max(0, (y - TURNS.from) / (TURNS.whole - TURNS.from)));
    const angle = (ARMS_IN[layout] * part * Math.PI) / 180;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const [dx, dy] = [x - x0, y - y0];
    const turned = [x0 + dx * cos - dy * sin, y0 + dx * sin + dy * cos] as const;
    return corner ? [...turned, corner] : turned;
  });
}

const mirrored = ([x, y, corner]: Knot): Knot => (corner ? [-x, y, corner] : [-x, y]);
