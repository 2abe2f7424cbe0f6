/**
 * The figure's body against what is published: bone lengths by Drillis & Contini 1966 (as drawn in Winter, Biomechanics and Motor
 * Control of Human Movement, fig. 4.1; quoted from memory), ranges of joints by the tables named in `lib/figure/body/ranges.ts`,
 * and inverse kinematics against worked triangles.
 */
import { describe, expect, it } from "vitest";
import { BONES, STATURE } from "#lib/figure/body/lengths.ts";
import { RANGES } from "#lib/figure/body/ranges.ts";
import { chord, meeting, twoBones } from "#lib/figure/space/ik.ts";

describe("bones", () => {
  it.each([
    ["shank", BONES.shank, 0.246],
    ["thigh", BONES.thigh, 0.245],
    ["trunk", BONES.trunk, 0.288],
    ["upperArm", BONES.upperArm, 0.186],
    ["forearm", BONES.forearm, 0.146],
    ["ankle height", BONES.ankle, 0.039],
    ["foot, heel to toes", BONES.heel + BONES.ball + BONES.toes, 0.152],
  ])("%s as a part of stature", (_, metres, share) => {
    expect(metres / STATURE).toBeCloseTo(share, 3);
  });
});

/** Merck Manual, Normal Values for Range of Motion of Joints: hip 0-125, knee 0-130, ankle 20 and 50, elbow 0-160, hip back 15. */
const MERCK = { hip: [-15, 125], knee: [0, 130], ankle: [-20, 50], elbow: [0, 160] } as const;
/** 38 CFR 4.71, Plates I and II: hip 0-125, knee 0-140, ankle 20 and 45, elbow 0-145, shoulder 0-180. */
const CFR = { hip: [0, 125], knee: [0, 140], ankle: [-20, 45], elbow: [0, 145], shoulder: [0, 180] } as const;

describe("ranges", () => {
  it.each(["hip", "knee", "ankle", "elbow"] as const)("%s bends no further than the wider of two tables", (joint) => {
    expect(RANGES[joint][1]).toBeLessThanOrEqual(Math.max(MERCK[joint][1], CFR[joint][1]));
    expect(RANGES.shoulder[1]).toBe(CFR.shoulder[1]);
    expect(RANGES.ankle[0]).toBe(MERCK.ankle[0]);
  });
});

describe("two bones", () => {
  it("makes the right angle of a 3-4-5 triangle, to the side of the pole", () => {
    const { middle, end, short } = twoBones([0, 0, 0], [5, 0, 0], 3, 4, [0, 1, 0]);
    expect(middle[0]).toBeCloseTo(1.8, 9);
    expect(middle[1]).toBeCloseTo(2.4, 9);
    expect(end[0]).toBeCloseTo(5, 9);
    expect(short).toBe(0);
    expect(twoBones([0, 0, 0], [5, 0, 0], 3, 4, [0, -1, 0]).middle[1]).toBeCloseTo(-2.4, 9);
  });

  it("says by how much a goal is out of reach, and keeps the bones", () => {
    const { middle, end, short } = twoBones([0, 0, 0], [0, 10, 0], 3, 4, [1, 0, 0]);
    expect(short).toBeCloseTo(10 - 7 * 0.9995, 9);
    expect(Math.hypot(...middle)).toBeCloseTo(3, 9);
    expect(Math.hypot(end[0] - middle[0], end[1] - middle[1], end[2] - middle[2])).toBeCloseTo(4, 9);
  });

  it("finds where two circles meet, and the chord of a bent chain", () => {
    const upper = meeting([0, 0, 0], 5, [6, 0, 0], 5);
    expect(upper[0]).toBeCloseTo(3, 9);
    expect(upper[1]).toBeCloseTo(4, 9);
    expect(meeting([0, 0, 0], 5, [6, 0, 0], 5, "lower")[1]).toBeCloseTo(-4, 9);
    expect(chord(3, 4, 90)).toBeCloseTo(5, 9);
    expect(chord(3, 4, 0)).toBeCloseTo(7, 9);
  });
});
