/** A set-up in words, for a demonstrator who has to take that position. */
import { isMoveItem, itemById } from "#lib/plan/lookup.ts";
import type { Facing, Move, Plan } from "#lib/plan/schema.ts";
import { setupOf } from "#lib/transitions/transitions.ts";

const STATION: Record<Move["station"], string> = {
  front: "on the front platform",
  carriage: "on the carriage",
  back: "on the back platform",
  floor: "on the floor",
};
const POSITION: Record<Move["position"], string> = {
  plank: "plank",
  quadruped: "hands and knees",
  kneeling: "kneeling",
  seated: "seated",
  supine: "lying on the back",
  prone: "lying face down",
  "side-lying": "lying on the side",
  standing: "standing",
  inverted: "hips above the head",
};
const FACING: Record<Facing, string> = {
  front: "the front",
  back: "the back",
  left: "the left side",
  right: "the right side",
};
const HANDS: Record<Move["hands"], string> = {
  free: "free",
  "front-bars": "on the front bars",
  "back-bars": "on the back bars",
  "front-platform": "on the front platform",
  "back-platform": "on the back platform",
  carriage: "on the carriage",
  handles: "both handles",
  "handles-crossed": "both handles, crossed",
  "one-handle": "one handle",
};
const FEET: Record<Move["feet"], string> = {
  free: "free",
  carriage: "on the carriage",
  "front-platform": "on the front platform",
  "back-platform": "on the back platform",
  floor: "on the floor",
  "front-strap": "in the front strap",
  "back-strap": "in the back strap",
  "cable-strap": "one in the cable strap",
};

export interface SetupWords {
  /** "kneeling, on the carriage" */
  readonly body: string;
  readonly facing: string;
  readonly hands: string;
  readonly feet: string;
}

/** Null for a pause, an unknown item or a move that the plan does not carry. */
export function setupWords(plan: Plan, itemId: string | null): SetupWords | null {
  const item = itemId === null ? undefined : itemById(plan, itemId);
  const setup = item && isMoveItem(item) ? setupOf(plan, item) : null;
  if (!setup) return null;
  return {
    body: `${POSITION[setup.position]}, ${STATION[setup.station]}`,
    facing: FACING[setup.facing],
    hands: HANDS[setup.hands],
    feet: FEET[setup.feet],
  };
}
