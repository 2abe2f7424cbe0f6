/** The joints of a posed body, what it touches and what it holds. */
import type { Surface } from "../space/machine.ts";
import { crossOf, plus, scaled, turned, UP, type Vec } from "../space/vector.ts";

export type BodySide = "left" | "right";
export const BODY_SIDES = ["left", "right"] as const;
export const otherBodySide = (side: BodySide): BodySide => (side === "left" ? "right" : "left");

export const PAIRED = ["hip", "knee", "ankle", "heel", "ball", "toe", "shoulder", "elbow", "wrist", "hand"] as const;
export type PairedJoint = (typeof PAIRED)[number];
export type Joint = "pelvis" | "waist" | "chest" | "head" | `${PairedJoint}-${BodySide}`;
export const at = (name: PairedJoint, side: BodySide): Joint => `${name}-${side}`;
type BodyJoints = Readonly<Record<Joint, Vec>>;

/** A part of the body that has directions of its own: towards the head, to its front, to its left. */
export interface BodyFrame {
  readonly up: Vec;
  readonly front: Vec;
  readonly left: Vec;
}

/** A frame upright before the direction `front`, then leaned by `pitch`: 90 is face down, -90 on the back. */
export function frameFacing(front: Vec, pitch = 0): BodyFrame {
  const left = crossOf(UP, front);
  return spin({ up: UP, front, left }, left, pitch);
}

export const spin = (frame: BodyFrame, axis: Vec, degrees: number): BodyFrame => ({
  up: turned(frame.up, axis, degrees),
  front: turned(frame.front, axis, degrees),
  left: turned(frame.left, axis, degrees),
});

/** A direction of a frame: to its front, up, and outwards to that side. */
export const within = (frame: BodyFrame, [front, up, out]: Vec, side: BodySide): Vec =>
  plus(plus(scaled(frame.front, front), frame.up, up), frame.left, side === "left" ? out : -out);

export interface Contact {
  readonly joint: Joint;
  readonly surface: Surface;
}

export interface Cable {
  readonly joint: Joint;
  readonly kind: "handle" | "strap";
  /** Which pulley it comes from: the one at the viewer's side or the far one. */
  readonly pulley: "near" | "far" | "middle";
}

export interface Body {
  readonly joints: BodyJoints;
  readonly frames: { readonly pelvis: BodyFrame; readonly chest: BodyFrame; readonly head: BodyFrame };
  readonly contacts: readonly Contact[];
}
