/** What a figure shows, in words: for those who do not see it. */
import type { Facing, ItemSide } from "#lib/plan/schema.ts";
import type { FigureMove } from "./stances/stage.ts";

const POSITION: Readonly<Record<FigureMove["position"], string>> = {
  plank: "Plank",
  quadruped: "On hands and knees",
  kneeling: "Kneeling",
  seated: "Sitting",
  supine: "Lying on the back",
  prone: "Lying face down",
  "side-lying": "Lying on one side",
  standing: "Standing",
  inverted: "Hips above the head",
};
const STATION: Readonly<Record<FigureMove["station"], string>> = {
  front: "at the front",
  carriage: "on the carriage",
  back: "at the back",
  floor: "on the floor",
};
const FACING: Readonly<Record<Facing, string>> = {
  front: "facing front",
  back: "facing back",
  left: "facing left",
  right: "facing right",
};
const HANDS: Readonly<Record<FigureMove["hands"], string>> = {
  free: "hands free",
  "front-bars": "hands on the front bars",
  "back-bars": "hands on the back bars",
  "front-platform": "hands on the front platform",
  "back-platform": "hands on the back platform",
  carriage: "hands on the carriage",
  handles: "a handle in each hand",
  "handles-crossed": "a handle in each hand, crossed",
  "one-handle": "one handle",
};
const FEET: Readonly<Record<FigureMove["feet"], string>> = {
  free: "",
  carriage: "feet on the carriage",
  "front-platform": "feet on the front platform",
  "back-platform": "feet on the back platform",
  floor: "feet on the floor",
  "front-strap": "feet in the front strap",
  "back-strap": "feet in the back strap",
  "cable-strap": "feet in the cable straps",
};
const ONE_FOOT: Partial<Record<FigureMove["feet"], string>> = {
  "front-platform": "one foot on the front platform",
  "back-platform": "one foot on the back platform",
  "cable-strap": "one foot in the cable strap",
};

/** "Kneeling on the carriage, facing back, a handle in each hand". Where the position says it, the feet are left out. */
export function figureWords(
  move: FigureMove,
  { side, facing }: { readonly side?: ItemSide; readonly facing?: Facing } = {},
): string {
  const kneels = move.position === "kneeling" || move.position === "quadruped";
  const stands = move.position === "standing" && move.station === "floor";
  const plain = (kneels && move.feet === "carriage") || (stands && move.feet === "floor");
  const feet = plain ? "" : move.sides === "each" ? (ONE_FOOT[move.feet] ?? FEET[move.feet]) : FEET[move.feet];
  const worked = side === "left" || side === "right" ? `${side} side` : "";
  return [
    `${POSITION[move.position]} ${STATION[move.station]}`,
    FACING[facing ?? move.facing],
    HANDS[move.hands],
    feet,
    worked,
  ]
    .filter((part) => part !== "")
    .join(", ");
}
