/** Which wrists carry weight in a move, and how much against a plank on straight arms: by position and hands. */
import type { Move, MoveItem } from "#lib/plan/schema.ts";
import { handsShare } from "./hands.ts";

export interface WristLoad {
  /** 1: as in a plank on straight arms. 0: none. */
  readonly left: number;
  readonly right: number;
}

const NONE: WristLoad = { left: 0, right: 0 };

/** Hands that rest on something which does not give way to a pull. */
const ON_SOMETHING: readonly Move["hands"][] = [
  "front-bars",
  "back-bars",
  "front-platform",
  "back-platform",
  "carriage",
];

/**
 * A named pose decides. Without one, hands on a bar, a platform or the carriage carry weight in a plank, upside down, on hands
 * and knees, and in a side plank, where only the lower wrist does. A move that is named after forearms or elbows is done on
 * those.
 */
export function wristLoad(move: Move | undefined, side: MoveItem["side"]): WristLoad {
  const load = move ? loadOf(move) : 0;
  if (!move || load === 0) return NONE;
  const oneSided = move.position === "side-lying" && (side === "left" || side === "right");
  return oneSided ? { ...NONE, [side]: load } : { left: load, right: load };
}

function loadOf(move: Move): number {
  if (move.handsShare) return move.handsShare.pose === "forearm-plank" ? 0 : against(move.handsShare.pose);
  if (!ON_SOMETHING.includes(move.hands) || /\b(?:forearm|elbow)s?\b/i.test(move.name)) return 0;
  if (move.position === "quadruped") return against("knees");
  return ["plank", "inverted", "side-lying"].includes(move.position) ? 1 : 0;
}

const against = (pose: Parameters<typeof handsShare>[0]): number =>
  handsShare(pose).share / handsShare("high-plank").share;
