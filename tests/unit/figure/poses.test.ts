/** Bodies that a body could take: bones as long as they are, joints in their ranges, hands and feet where the data say. */
import { describe, expect, it } from "vitest";
import { type FigurePose, figureOf, type MoveFigure } from "#lib/figure/figure.ts";
import type { Vec } from "#lib/figure/space/vector.ts";
import type { FigureMove } from "#lib/figure/stances/stage.ts";
import { isMoveItem, moveOf } from "#lib/plan/lookup.ts";
import {
  FACINGS,
  FEET,
  GROUPS,
  HANDS,
  MOVE_SIDES,
  PATTERNS,
  POSES,
  POSITIONS,
  SPINE_DIRECTIONS,
  STATIONS,
} from "#lib/plan/schema.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { FIRST_TRY } from "#seed/plans/first-try.ts";
import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";
import { WHOLE_BODY } from "#seed/plans/whole-body.ts";
import { Dice } from "../../support/dice.ts";
import { jointOf, SIDES } from "../../support/posed.ts";
import { contactFaults, lengthFaults, rangeFaults, sunkFaults } from "../../support/posed-faults.ts";

const LIBRARY: readonly (readonly [string, FigureMove])[] = Object.entries(STARTER_MOVES);
/** Every move of the first library, for each side that it has, and for both sides that a person may face. */
const KNOWN = LIBRARY.flatMap(([id, move]) => {
  const facings = move.facing === "left" ? (["left", "right"] as const) : [move.facing];
  const sides = move.sides === "each" ? SIDES : [undefined];
  return facings.flatMap((facing) =>
    sides.map((side) => ({ name: `${id} ${facing} ${side ?? ""}`, move, figure: figureOf(move, { facing, side }) })),
  );
});

function anyMove(dice: Dice): FigureMove {
  const from = dice.upTo(90) * 10;
  return {
    station: dice.one(STATIONS),
    position: dice.one(POSITIONS),
    facing: dice.one(FACINGS),
    hands: dice.one(HANDS),
    feet: dice.one(FEET),
    sides: dice.one(MOVE_SIDES),
    pattern: dice.one(PATTERNS),
    muscles: { [dice.one(GROUPS)]: 1, [dice.one(GROUPS)]: 0.5 },
    spine: [dice.one(SPINE_DIRECTIONS)],
    travelMm: [from, from + dice.upTo(40) * 10],
    ...(dice.upTo(5) === 0 ? { handsShare: { pose: dice.one(POSES) } } : {}),
  };
}

/** Every move item of the demo's plans, with its own side and facing. */
const PLANNED = [FIRST_TRY, UPPER_BODY_AND_TRUNK, WHOLE_BODY].flatMap((plan) =>
  plan.items.filter(isMoveItem).flatMap((item) => {
    const move = moveOf(plan, item);
    if (!move) return [];
    return [
      { name: `${plan.title}, ${item.move}`, move, figure: figureOf(move, { side: item.side, facing: item.facing }) },
    ];
  }),
);

const RANDOM = (() => {
  const dice = new Dice(20261129);
  return Array.from({ length: 1000 }, (_, i) => {
    const move = anyMove(dice);
    return { name: `${i} ${JSON.stringify(move)}`, move, figure: figureOf(move) };
  });
})();

interface Case {
  readonly name: string;
  readonly figure: MoveFigure;
}
/** What is wrong with both poses of each, at most ten lines of it. */
const faults = (cases: readonly Case[], check: (pose: FigurePose, figure: MoveFigure) => readonly string[]): string[] =>
  cases
    .flatMap(({ name, figure }) =>
      (["start", "end"] as const).flatMap((phase) =>
        check(figure[phase], figure).map((fault) => `${name} ${phase}: ${fault}`),
      ),
    )
    .slice(0, 10);

describe.each([
  ["the first library", KNOWN],
  ["the demo's plans", PLANNED],
  ["1,000 random moves", RANDOM],
] as const)("%s", (_, cases: readonly Case[]) => {
  it("has bones of one length in every pose", () => {
    expect(faults(cases, lengthFaults)).toEqual([]);
  });
  it("bends no joint further than published ranges", () => {
    expect(faults(cases, rangeFaults)).toEqual([]);
  });
  it("touches within 5 mm what it says it touches", () => {
    expect(faults(cases, contactFaults)).toEqual([]);
  });
  it("goes neither under the floor nor through carriage or platforms", () => {
    expect(faults(cases, sunkFaults)).toEqual([]);
  });
  it("keeps the carriage on the rails", () => {
    expect(faults(cases, ({ travel }) => (travel >= 0 && travel <= 0.9 ? [] : [`${travel}`]))).toEqual([]);
  });
  it("rests on something", () => {
    expect(faults(cases, ({ contacts }) => (contacts.length > 0 ? [] : ["touches nothing"]))).toEqual([]);
  });
});

describe("the checks", () => {
  const { start } = figureOf(STARTER_MOVES["kneeling-lean-back"] as FigureMove);
  const moved = (joints: RegExp, [dx, dy, dz]: readonly [number, number, number]): FigurePose => {
    const entries = Object.entries(start.joints).map(([name, [x, y, z]]) =>
      joints.test(name) ? [name, [x + dx, y + dy, z + dz]] : [name, [x, y, z]],
    );
    return { ...start, joints: Object.fromEntries(entries) };
  };
  it("find a longer bone, a joint bent the wrong way, a knee in the air and a body sunk into the carriage", () => {
    expect(lengthFaults(moved(/^elbow-left/, [0.01, 0, 0])).length).toBeGreaterThan(0);
    expect(rangeFaults(moved(/^(ankle|heel|ball|toe)-left/, [-0.8, 0, 0])).join()).toContain("knee");
    expect(contactFaults(moved(/./, [0, 0.006, 0])).join()).toContain("knee-left on carriage");
    expect(contactFaults(moved(/./, [1.4, 0, 0])).join()).toContain("beside it");
    expect(sunkFaults(moved(/./, [0, -0.08, 0])).length).toBeGreaterThan(0);
    expect(contactFaults(start).concat(lengthFaults(start), rangeFaults(start), sunkFaults(start))).toEqual([]);
  });
});

/** The parts of a limb that may be what touches. */
const HAND = /^(wrist|hand|elbow)/;
const FOOT = /^(ball|heel|ankle|knee)/;

describe("hands and feet", () => {
  const surfaces = /bars$|platform$|^carriage$/;
  it("are where a move of the library says, with nothing left out", () => {
    expect(KNOWN.filter(({ figure }) => figure.unmet.length > 0).map(({ name }) => name)).toEqual([]);
    const missing = faults(KNOWN, (pose, { move }) => [
      ...(surfaces.test(move.hands) && !pose.contacts.some((c) => HAND.test(c.joint) && c.surface === move.hands)
        ? ["hands"]
        : []),
      ...(/platform$|^carriage$|^floor$/.test(move.feet) &&
      !pose.contacts.some((c) => FOOT.test(c.joint) && c.surface === move.feet)
        ? ["feet"]
        : []),
    ]);
    expect(missing).toEqual([]);
  });

  it("hold as many handles and straps as the move has", () => {
    const wrong = faults(KNOWN, ({ cables }, { move }) => {
      const handles = cables.filter(({ kind }) => kind === "handle").length;
      const want = move.hands === "one-handle" ? 1 : move.hands.startsWith("handles") ? 2 : 0;
      const straps = cables.some(({ kind }) => kind === "strap");
      return handles === want && straps === (move.feet === "cable-strap")
        ? []
        : [`${handles} of ${want}, straps ${straps}`];
    });
    expect(wrong).toEqual([]);
  });

  it("of a random move hold what it says, or the field is named as unmet", () => {
    const silent = faults(RANDOM, (pose, { move, unmet }) => {
      const held = pose.contacts.some((c) => HAND.test(c.joint) && c.surface === move.hands);
      return surfaces.test(move.hands) && !held && !unmet.includes("hands") ? ["hands"] : [];
    });
    expect(silent).toEqual([]);
    // The check looks at something: many random moves do hold what they say.
    expect(
      RANDOM.filter(({ move, figure }) => surfaces.test(move.hands) && !figure.unmet.includes("hands")).length,
    ).toBeGreaterThan(50);
  });

  it("move the carriage as far as the data say, but for three moves whose data no such body can follow", () => {
    const off = KNOWN.flatMap(({ name, move, figure }) => {
      const shown = [figure.start.travel, figure.end.travel]
        .sort((a, b) => a - b)
        .map((metres) => Math.round(metres * 1000));
      const [from, to] = move.travelMm ?? shown;
      return Math.abs((shown[0] ?? 0) - (from ?? 0)) > 1 || Math.abs((shown[1] ?? 0) - (to ?? 0)) > 1
        ? [name.split(" ")[0]]
        : [];
    });
    expect([...new Set(off)].sort()).toEqual(["calf-press-supine", "leg-press-back", "push-up-slow"]);
  });

  it("keep their place on the carriage while it moves", () => {
    const slips = KNOWN.flatMap(({ name, figure: { start, end } }) =>
      start.contacts
        .filter(
          ({ joint, surface }) =>
            surface === "carriage" && end.contacts.some((c) => c.joint === joint && c.surface === surface),
        )
        .map(
          ({ joint }) =>
            [
              name,
              joint,
              Math.abs(jointOf(end, joint)[0] - end.travel - jointOf(start, joint)[0] + start.travel),
            ] as const,
        )
        .filter(([, , slip]) => slip > 0.02),
    );
    expect(slips).toEqual([]);
  });
});

describe("what the data change", () => {
  const ROW = STARTER_MOVES["row-kneeling"] as FigureMove;
  const SINGLE = STARTER_MOVES["row-single"] as FigureMove;

  it("is the same figure from the same fields", () => {
    expect(figureOf(ROW)).toEqual(figureOf({ ...ROW }));
  });

  it("facing front and facing back look opposite ways", () => {
    const [front, back] = (["front", "back"] as const).map((facing) => figureOf(ROW, { facing }));
    expect(front?.start.frames.head.front[0]).toBeLessThan(-0.9);
    expect(back?.start.frames.head.front[0]).toBeGreaterThan(0.9);
  });

  it("left and right work with the arm or leg of that side", () => {
    for (const side of SIDES)
      expect(figureOf(SINGLE, { side }).end.cables.map(({ joint }) => joint)).toEqual([`hand-${side}`]);
    const same = LIBRARY.filter(
      ([, move]) =>
        move.sides === "each" && sameBody(figureOf(move, { side: "left" }), figureOf(move, { side: "right" })),
    );
    // Held by the facing alone: the side of these is the side that a person turns to.
    expect(same.map(([id]) => id).filter((id) => STARTER_MOVES[id]?.facing !== "left")).toEqual([]);
  });

  it("no two moves of the library are drawn alike", () => {
    const figures = LIBRARY.map(([id, move]) => [id, figureOf(move)] as const);
    const alike = figures.flatMap(([a, one], i) =>
      figures.slice(i + 1).flatMap(([b, other]) => (sameBody(one, other) ? [`${a} = ${b}`] : [])),
    );
    expect(alike).toEqual([]);
  });

  it("a correction turns the pose and keeps hands and feet", () => {
    const plank = STARTER_MOVES["plank-slide"] as FigureMove;
    const plain = figureOf(plank);
    const lower = figureOf({ ...plank, figure: { end: { upMm: -40 } } });
    expect(jointOf(lower.end, "pelvis")[1]).toBeCloseTo(jointOf(plain.end, "pelvis")[1] - 0.04, 6);
    expect(lower.end.contacts.map(({ joint }) => joint).sort()).toEqual(
      plain.end.contacts.map(({ joint }) => joint).sort(),
    );
    expect(lower.start).toEqual(plain.start);
  });

  it("a correction to the working side is the same for both sides, in a mirror", () => {
    const move = { ...(STARTER_MOVES["row-kneeling"] as FigureMove), sides: "each" as const };
    const bent = { ...move, figure: { end: { asideDeg: 12, turnDeg: 8 } } };
    const headBy = (side: "left" | "right") => {
      const [was, is] = [move, bent].map((one) => jointOf(figureOf(one, { side }).end, "head")) as [Vec, Vec];
      return is.map((n, axis) => n - (was[axis] ?? 0));
    };
    const [left, right] = [headBy("left"), headBy("right")];
    // This one faces an end, so its left and right are along z.
    expect(Math.abs(left[2] ?? 0)).toBeGreaterThan(0.02);
    expect(left[2]).toBeCloseTo(-(right[2] ?? 0), 6);
  });

  it("a correction away from the front goes that way at the back end too", () => {
    for (const id of ["plank-slide", "leg-press-back"]) {
      const move = STARTER_MOVES[id] as FigureMove;
      const by = (alongMm: number) => jointOf(figureOf({ ...move, figure: { end: { alongMm } } }).end, "pelvis")[0];
      expect(by(10) - by(0), id).toBeCloseTo(0.01, 6);
    }
  });
});

/** Whether no joint of either pose differs by more than 3 cm, and the same things are held. */
function sameBody(a: MoveFigure, b: MoveFigure): boolean {
  const near = (p: FigurePose, q: FigurePose) =>
    Object.keys(p.joints).every((name) => {
      const [x, y] = [p, q].map((pose) => jointOf(pose, name as keyof FigurePose["joints"]));
      return x !== undefined && y !== undefined && Math.hypot(x[0] - y[0], x[1] - y[1], x[2] - y[2]) < 0.03;
    });
  const cables = (f: MoveFigure) => f.end.cables.map(({ joint, kind }) => `${joint} ${kind}`).join();
  return near(a.start, b.start) && near(a.end, b.end) && cables(a) === cables(b);
}
