/** A move's figure: the body at the start and at the end of the motion, on the machine. Pure: the same fields, the same figure. */
import type { Facing, ItemSide } from "#lib/plan/schema.ts";
import { at, type BodyFrame, type BodySide, type Cable, type Contact, type Joint, PAIRED } from "./body/joints.ts";
import { withCorrection } from "./correction.ts";
import { type SolvedBody, solveBody } from "./solve.ts";
import { MACHINE, MIRROR } from "./space/machine.ts";
import { crossOf, type Vec } from "./space/vector.ts";
import { kneeling } from "./stances/kneeling.ts";
import { plank } from "./stances/plank.ts";
import { prone } from "./stances/prone.ts";
import { quadruped } from "./stances/quadruped.ts";
import { armsOf, figureView, onForearms, tellingPhase, type View } from "./stances/scheme.ts";
import { seated } from "./stances/seated.ts";
import { type Settled, settledMove, type UnmetField } from "./stances/settle.ts";
import { sideLying } from "./stances/side-lying.ts";
import type { FigureMove, PoseStage, PositionStance } from "./stances/stage.ts";
import { standing } from "./stances/standing.ts";
import { supine } from "./stances/supine.ts";

export interface FigurePose extends SolvedBody {
  /** How far the carriage is from home, metres. */
  readonly travel: number;
}

export interface MoveFigure {
  readonly move: FigureMove;
  readonly start: FigurePose;
  readonly end: FigurePose;
  /** The pose that tells the move where one is drawn. */
  readonly tells: "start" | "end";
  readonly view: View;
  readonly facing: Facing;
  /** The side that works; null where both do. */
  readonly worked: BodySide | null;
  /** A band holds the feet on the carriage. */
  readonly strapped: boolean;
  /** A hold: the body stays as it is, whatever the carriage may drift. */
  readonly held: boolean;
  /** Fields that no body can follow together with the others: drawn without them. */
  readonly unmet: readonly UnmetField[];
}

export interface FigureOptions {
  readonly side?: ItemSide | undefined;
  readonly facing?: Facing | undefined;
}

const STANCES: Readonly<Record<FigureMove["position"], PositionStance>> = {
  plank,
  inverted: plank,
  quadruped,
  kneeling,
  seated,
  supine,
  prone,
  "side-lying": sideLying,
  standing,
};

const FRONTS: Readonly<Record<Facing, Vec>> = {
  front: [-1, 0, 0],
  back: [1, 0, 0],
  left: [0, 0, 1],
  right: [0, 0, -1],
};

export function figureOf(given: FigureMove, options: FigureOptions = {}): MoveFigure {
  const move = options.facing ? { ...given, facing: options.facing } : given;
  const ready = settledMove(move);
  const worked = workedSide(move, ready, options.side);
  const poses = bestPoses(ready, ready.mirrored ? flipped(worked) : worked);
  const [start, end] = ready.mirrored ? poses.map(unmirrored) : poses;
  const facing = ready.mirrored ? FACED_BACK[ready.move.facing] : ready.move.facing;
  const sided = move.sides === "each" || options.side === "left" || options.side === "right";
  return {
    move,
    start: start as FigurePose,
    end: end as FigurePose,
    tells: tellingPhase(move),
    view: figureView({ ...move, facing }),
    facing,
    worked: sided ? worked : null,
    held: move.tempo !== undefined && "holdSeconds" in move.tempo,
    strapped: move.feet === "front-strap" || move.feet === "back-strap",
    unmet: unmetOf(move, ready, [start, end] as FigurePose[]),
  };
}

const FACED_BACK: Readonly<Record<Facing, Facing>> = { front: "back", back: "front", left: "left", right: "right" };
const flipped = (side: BodySide): BodySide => (side === "left" ? "right" : "left");

/** The item's side; without one the side nearer to the viewer, or away from the cables for who faces the side. */
function workedSide(move: FigureMove, { move: { facing }, mirrored }: Settled, side: ItemSide | undefined): BodySide {
  if (side === "left" || side === "right") return side;
  const faced = mirrored ? FACED_BACK[facing] : facing;
  if (move.position === "side-lying") return faced === "left" ? "right" : "left";
  return faced === "front" || faced === "right" ? "left" : "right";
}

/** How far off the usual place on the carriage, metres, and how much of the travel; tried from the nearest on. */
const SHIFTS = [0, 0.12, -0.12, 0.26, -0.26, 0.42, -0.42, 0.55];
const SHARES = [0.8, 0.6, 0.4, 0.2, 0];
const FINE = 1e-6;

function bestPoses(ready: Settled, worked: BodySide): readonly [FigurePose, FigurePose] {
  const posesFor = (travels: PoseStage["travels"], attempt: number) => {
    const moment = { travels, shift: SHIFTS[attempt] ?? 0, attempt, worked };
    return [poseAt(ready, { ...moment, end: false }), poseAt(ready, { ...moment, end: true })] as const;
  };
  let best = posesFor(ready.travels, 0);
  for (const travels of rangesOf(ready)) {
    // A body that fits and only misses a hold is looked for at other travels, not at every place of each.
    const shorter = travels !== ready.travels && best.every(({ strain }) => strain < FINE);
    for (const attempt of shorter ? [0] : SHIFTS.keys()) {
      if (costOf(best) < FINE) return best;
      const pair = posesFor(travels, attempt);
      if (costOf(pair) < costOf(best) - FINE) best = pair;
    }
  }
  return best;
}

/** A joint out of its range or a limb in the machine weighs more than a hand that holds nothing. */
const costOf = (pair: readonly FigurePose[]): number =>
  pair.reduce((sum, pose) => sum + pose.strain * 10 + pose.missed, 0);

/** The travel asked for, then shorter ones: in the mirror towards the front end, else towards the start. */
function rangesOf({ travels, mirrored }: Settled): PoseStage["travels"][] {
  const [start, end] = travels;
  const shorter = SHARES.map((share) => [start, start + (end - start) * share] as const);
  const nearer = SHARES.map((share) => [start * share, end * share] as const);
  const late = SHARES.map((share) => [end + (start - end) * share, end] as const);
  return mirrored ? [travels, ...shorter, ...late, ...nearer] : [travels, ...shorter, ...nearer];
}

type Moment = Pick<PoseStage, "travels" | "shift" | "attempt" | "end" | "worked">;

function poseAt({ move, mirrored }: Settled, moment: Moment): FigurePose {
  const front = FRONTS[move.facing];
  const travel = moment.travels[moment.end ? 1 : 0];
  const stage: PoseStage = {
    ...moment,
    move,
    facing: move.facing,
    travel,
    front,
    left: crossOf([0, 1, 0], front),
    arms: armsOf(move)[moment.end ? 1 : 0],
    onForearms: onForearms(move),
  };
  const by = moment.end ? move.figure?.end : move.figure?.start;
  const posture = withCorrection(STANCES[move.position](stage), by, { worked: moment.worked, mirrored });
  return { ...solveBody(posture, travel), travel };
}

/** What was worked out at the front, at the back: x turned round, left and right changed over. */
function unmirrored(pose: FigurePose): FigurePose {
  const point = ([x, y, z]: Vec): Vec => [MIRROR - x, y, z];
  const way = ([x, y, z]: Vec): Vec => [-x, y, z];
  const joints = Object.fromEntries(
    Object.entries(pose.joints).map(([name, p]) => [otherJoint(name as Joint), point(p)]),
  );
  const frame = ({ up, front, left }: BodyFrame): BodyFrame => ({
    up: way(up),
    front: way(front),
    left: way([-left[0], -left[1], -left[2]]),
  });
  const { pelvis, chest, head } = pose.frames;
  return {
    ...pose,
    joints: joints as FigurePose["joints"],
    frames: { pelvis: frame(pelvis), chest: frame(chest), head: frame(head) },
    contacts: pose.contacts.map(atBack),
    cables: pose.cables.map((cable): Cable => ({ ...cable, joint: otherJoint(cable.joint) })),
    travel: Math.min(MACHINE.travel, Math.max(0, MIRROR - MACHINE.carriage[1] - pose.travel)),
  };
}

function otherJoint(name: Joint): Joint {
  const paired = PAIRED.find((pair) => name.startsWith(`${pair}-`));
  return paired ? at(paired, name.endsWith("left") ? "right" : "left") : name;
}

const atBack = ({ joint, surface }: Contact): Contact => ({
  joint: otherJoint(joint),
  surface: surface.replace("front", "back") as Contact["surface"],
});

/** What was settled, and what no hand or foot came to hold in one of the poses. */
function unmetOf(move: FigureMove, ready: Settled, poses: readonly FigurePose[]): UnmetField[] {
  const meets = (field: string, joints: RegExp) =>
    poses.every(({ contacts }) => contacts.some(({ joint, surface }) => joints.test(joint) && surface === field));
  const hands = /bars$|platform$|^carriage$/.test(move.hands) && !meets(move.hands, /^(wrist|hand|elbow)/);
  const feet = /platform$|^carriage$|^floor$/.test(move.feet) && !meets(move.feet, /^(ball|heel|ankle|knee)/);
  const cable =
    move.feet === "cable-strap" && !poses.every(({ cables }) => cables.some(({ kind }) => kind === "strap"));
  return [
    ...new Set<UnmetField>([
      ...ready.unmet,
      ...(hands ? (["hands"] as const) : []),
      ...(feet || cable ? (["feet"] as const) : []),
    ]),
  ];
}
