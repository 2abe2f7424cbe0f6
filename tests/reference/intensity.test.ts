/**
 * Intensity against published cut-offs and the energy formula, with METs of the Compendium of Physical Activities (2011:
 * Ainsworth et al., Med Sci Sports Exerc 43(8):1575-1581; 2024: Herrmann et al., J Sport Health Sci 13(1):6-12).
 */
import { describe, expect, it } from "vitest";
import { classIntensity, energyKcal, levelOf } from "#lib/intensity/intensity.ts";
import { exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";

describe("levels for adults: light 2.0-2.9, moderate 3.0-5.9, vigorous from 6.0 MET (F&S Reports 4(2):150-158, 2023, table 1)", () => {
  it.each([
    [1.9, "very-light"],
    [2.0, "light"],
    [2.9, "light"],
    [3.0, "moderate"],
    [5.9, "moderate"],
    [6.0, "vigorous"],
    [8.7, "vigorous"],
  ])("%d MET is %s", (met, level) => expect(levelOf(met)).toBe(level));

  it.each([
    ["02101 stretching, mild", 2.3, "light"],
    ["02024 calisthenics, light", 2.8, "light"],
    ["02054 resistance, several exercises", 3.5, "moderate"],
    ["02022 calisthenics, moderate", 3.8, "moderate"],
    ["02050 resistance, vigorous", 6.0, "vigorous"],
  ])("Compendium %s, %d MET: %s", (_code, met, level) => expect(levelOf(met)).toBe(level));
});

describe("energy: MET x 3.5 x kg / 200 x minutes (3.5 ml O2 a kg and minute, 5 kcal a litre)", () => {
  it("70 kg at 4 MET for 45 minutes: 220.5 kcal", () => {
    expect(energyKcal({ met: 4, kg: 70, minutes: 45 })).toBeCloseTo(220.5, 9);
  });
  it("one twentieth more than MET x kg x hours (210 kcal)", () => {
    expect(energyKcal({ met: 4, kg: 70, minutes: 45 }) / (4 * 70 * 0.75)).toBeCloseTo(1.05, 12);
  });
});

/*
 * opening 60 s rest; a 90 s at 3.5; change to b (planned 20 s) rest; b 60 s at 6; pause 30 s rest; c no MET, 45 s, its
 * change 0 s, since nothing is told; closing 60 s rest. Rest 170 s, moderate 90 s, vigorous 60 s, unknown 45 s.
 * MET-minutes: (170 x 1 + 90 x 3.5 + 60 x 6) / 60 = 845 / 60 = 14.083333333
 */
describe("a class by hand", () => {
  const moves = {
    a: { ...exampleMoves.squat, met: 3.5 },
    b: { ...exampleMoves.squat, met: 6 },
    c: exampleMoves.squat,
  };
  const plan = examplePlan(
    [
      exampleMove("a", { move: "a", seconds: 90 }),
      { id: "h", kind: "heading", title: "On" },
      exampleMove("b", { move: "b", seconds: 60, transitionSeconds: 20 }),
      { id: "p", kind: "pause", seconds: 30 },
      exampleMove("c", { move: "c", seconds: 45, script: [] }),
    ],
    { moves },
  );
  const answer = classIntensity(plan);

  it("adds up minutes of each level; unknown moves are named and not counted", () => {
    expect(answer.seconds).toEqual({ rest: 170, "very-light": 0, light: 0, moderate: 90, vigorous: 60 });
    expect(answer.unknown).toEqual({ seconds: 45, items: ["c"] });
  });
  it("gives MET-minutes and energy per kilogram", () => {
    expect(answer.metMinutes).toBeCloseTo(845 / 60, 8);
    expect(answer.kcalPerKg).toBeCloseTo(((845 / 60) * 3.5) / 200, 8);
  });
  it("the arc covers the class without a gap", () => {
    expect(answer.arc.map((p) => [p.item, p.from, p.to, p.met])).toEqual([
      [null, 0, 60, 1],
      ["a", 60, 150, 3.5],
      ["b", 150, 170, 1],
      ["b", 170, 230, 6],
      ["p", 230, 260, 1],
      ["c", 260, 305, null],
      [null, 305, 365, 1],
    ]);
  });
  it("an empty class is all rest, an unknown move has no MET", () => {
    expect(classIntensity(examplePlan([])).seconds.rest).toBe(120);
    expect(classIntensity(examplePlan([exampleMove("x", { move: "gone" })])).unknown.items).toEqual(["x"]);
  });
});
