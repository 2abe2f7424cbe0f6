/**
 * The hands' share of body weight against force-plate studies. Each value keeps its quantity: a held position (static)
 * is compared with the model, which is static; a moving peak is another quantity and only used to see how a study's
 * own values differ from each other. No study of a moving carriage was found.
 */
import { describe, expect, it } from "vitest";
import { POSES } from "#lib/plan/schema.ts";
import { handsShare, massesOf, type Pose, staticShare } from "#lib/statics/hands.ts";
import { DE_LEVA_FEMALE, DE_LEVA_MALE, SEGMENT_LENGTHS, WINTER } from "#lib/statics/segments.ts";
import { jointsOf, type Stance } from "#lib/statics/stance.ts";

/** The studies' own spread: standard deviations of 3 to 4.5 percentage points, and means that differ by 4. */
const POINTS = 5;
const points = (pose: Pose) => handsShare(pose).share * 100;
const level: Stance = { on: "toes", arms: "straight", reach: "under", handsUp: 0, feetUp: 0, feet: "lifted" };

/** Per cent of body weight, held still. */
const HELD: readonly (readonly [Pose, string, number])[] = [
  ["high-plank", "Mier et al. 2014, Int J Exerc Sci 7(2):161-168, men, arms straight", 67.0],
  ["high-plank", "the same, women", 65.1],
  ["high-plank", "Gouvali & Boudolos 2005, J Strength Cond Res 19(1):146-151, start of a push-up", 66.4],
  ["high-plank", "Suprak et al. 2011, J Strength Cond Res 25(2):497-503, arms straight (second-hand)", 69.16],
  ["knees", "Mier et al. 2014, men, on the knees, arms straight", 52.5],
  ["knees", "the same, women", 51.5],
  ["knees", "Gouvali & Boudolos 2005, on the knees", 52.9],
  ["push-up-low", "Mier et al. 2014, men, held at the bottom", 74.6],
  ["push-up-low", "the same, women", 70.3],
  ["push-up-low", "Suprak et al. 2011, held at the bottom (second-hand)", 75.04],
];

describe("held positions, published", () => {
  it.each(HELD)("%s: %s, %d", (pose, _source, percent) => {
    expect(Math.abs(points(pose) - percent)).toBeLessThanOrEqual(POINTS);
  });

  it("the band of a held plank, and of one on the knees, meets the range of the studies' means", () => {
    const plank = handsShare("high-plank");
    expect(plank.low * 100).toBeLessThan(69.16);
    expect(plank.high * 100).toBeGreaterThan(65.1);
    const knees = handsShare("knees");
    expect(knees.low * 100).toBeLessThan(51.5);
    expect(knees.high * 100).toBeGreaterThan(53);
  });

  it("women's and men's own tables land within the spread of Mier's women (65.1, SD 3.1) and men (67.0, SD 3.8)", () => {
    expect(Math.abs(staticShare(level, { table: DE_LEVA_FEMALE, pressesAt: 0.045 }) * 100 - 65.1)).toBeLessThan(3.1);
    expect(Math.abs(staticShare(level, { table: DE_LEVA_MALE, pressesAt: 0.045 }) * 100 - 67.0)).toBeLessThan(3.8);
  });

  it("hands ahead of the shoulders carry less: 61 against 66.4 per cent (Gouvali & Boudolos 2005, second-hand)", () => {
    const ahead = staticShare({ ...level, reach: "square" }, { table: WINTER, pressesAt: 0.045 }) * 100;
    expect(ahead).toBeLessThan(points("high-plank"));
    expect(Math.abs(ahead - 61)).toBeLessThanOrEqual(POINTS);
  });
});

/**
 * Ebben et al. 2011, J Strength Cond Res 25(10):2891-2894, values second-hand: peak force while moving, in per cent of
 * body weight: 64 on level ground; hands on 30.48 cm 55, on 60.96 cm 41; feet on 30.48 cm 70, on 60.96 cm 74.
 */
describe("raised hands and feet, against the differences within one study of moving peaks", () => {
  const raised = (handsUp: number, feetUp: number) =>
    staticShare({ ...level, handsUp: handsUp / 1.74, feetUp: feetUp / 1.74 }, { table: WINTER, pressesAt: 0.045 }) *
    100;

  it("has the study's order: both heights of the hands, level, both heights of the feet", () => {
    const shares = [raised(0.6096, 0), raised(0.3048, 0), raised(0, 0), raised(0, 0.3048), raised(0, 0.6096)];
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
  });

  it("differs from level ground as the study's lower boxes do: 9 points less, 6 points more", () => {
    expect(Math.abs(points("hands-raised") - points("high-plank") + (64 - 55))).toBeLessThanOrEqual(POINTS);
    expect(Math.abs(points("feet-raised") - points("high-plank") - (70 - 64))).toBeLessThanOrEqual(POINTS);
  });
});

/**
 * A plank worked out independently from the same tables (no publication): Winter's masses, arms upright, the hand
 * pressing c statures ahead of the wrist.
 */
describe("a worked plank", () => {
  const share = (stance: Partial<Stance>, c: number) =>
    staticShare({ ...level, ...stance }, { table: WINTER, pressesAt: c });
  it.each([
    [0, 0.714, 0.614, 0.573],
    [0.03, 0.686, 0.573, 0.535],
    [0.045, 0.673, 0.555, 0.518],
    [0.06, 0.66, 0.538, 0.502],
  ])("c = %d of stature", (c, plank, resting, lifted) => {
    expect(Math.abs(share({}, c) - plank)).toBeLessThan(0.002);
    expect(Math.abs(share({ on: "knees", feet: "resting" }, c) - resting)).toBeLessThan(0.002);
    expect(Math.abs(share({ on: "knees", feet: "lifted" }, c) - lifted)).toBeLessThan(0.002);
  });
});

describe("the tables", () => {
  it.each([
    ["Winter", WINTER, 4],
    ["de Leva, women (the printed table adds up to 0.9999)", DE_LEVA_FEMALE, 3],
    ["de Leva, men", DE_LEVA_MALE, 4],
  ])("%s: the segments make up one body", (_name, table, digits) => {
    const masses = massesOf(jointsOf(level), table);
    expect(masses.reduce((sum, part) => sum + part.mass, 0)).toBeCloseTo(1, digits);
  });

  it("lengths agree with the heights of the joints (Drillis & Contini, from memory)", () => {
    expect(SEGMENT_LENGTHS.thigh).toBeCloseTo(0.53 - 0.285, 9);
    expect(SEGMENT_LENGTHS.shank).toBeCloseTo(0.285 - 0.039, 9);
    expect(SEGMENT_LENGTHS.trunk).toBeCloseTo(0.818 - 0.53, 9);
  });
});

describe("joints", () => {
  it("segments keep their length in every stance", () => {
    for (const on of ["toes", "knees"] as const) {
      for (const arms of ["straight", "forearms"] as const) {
        const j = jointsOf({ ...level, on, arms, handsUp: 0.1 });
        const far = (a: { x: number; y: number }, b: { x: number; y: number }) => Math.hypot(a.x - b.x, a.y - b.y);
        expect(far(j.knee, j.hip)).toBeCloseTo(SEGMENT_LENGTHS.thigh, 9);
        expect(far(j.knee, j.ankle)).toBeCloseTo(SEGMENT_LENGTHS.shank, 9);
        expect(far(j.hip, j.shoulder)).toBeCloseTo(SEGMENT_LENGTHS.trunk, 9);
        expect(far(j.shoulder, j.elbow)).toBeCloseTo(SEGMENT_LENGTHS.upperArm, 9);
        expect(far(j.elbow, j.wrist)).toBeCloseTo(SEGMENT_LENGTHS.forearm, 9);
      }
    }
  });

  it("straight arms reach the surface that the hands stand on", () => {
    for (const reach of ["under", "square"] as const) {
      expect(jointsOf({ ...level, reach, handsUp: 0.17 }).wrist.y).toBeCloseTo(0.17 + 0.02, 9);
      expect(jointsOf({ ...level, reach, feetUp: 0.17 }).wrist.y).toBeCloseTo(0.02, 9);
    }
  });
});

describe("every pose", () => {
  it("has a share within its band, and a band of at most ten points either way", () => {
    for (const pose of POSES) {
      const { share, low, high } = handsShare(pose);
      expect(low, pose).toBeLessThanOrEqual(share);
      expect(high, pose).toBeGreaterThanOrEqual(share);
      expect(high - low, pose).toBeLessThan(0.2);
      expect(low, pose).toBeGreaterThan(0.3);
      expect(high, pose).toBeLessThan(0.95);
    }
  });

  it("knees, hands raised, level, feet raised: the order that every study finds", () => {
    expect(points("knees")).toBeLessThan(points("hands-raised"));
    expect(points("hands-raised")).toBeLessThan(points("high-plank"));
    expect(points("high-plank")).toBeLessThan(points("feet-raised"));
    expect(points("high-plank")).toBeLessThan(points("push-up-low"));
  });
});
