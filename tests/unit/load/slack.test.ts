/** Where springs hang slack, how hard they make a move, and which wrists carry weight. */

import { describe, expect, it } from "vitest";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { keepSprings } from "#lib/load/keep-springs.ts";
import { slackMm, workJ } from "#lib/load/load.ts";
import { keptSentence, slackWords } from "#lib/load/load-words.ts";
import { springShare } from "#lib/load/spring-share.ts";
import type { Move } from "#lib/plan/schema.ts";
import { exampleEquipment, exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { handsShare } from "#lib/statics/hands.ts";
import { wristLoad } from "#lib/statics/wrists.ts";

describe("slack springs", () => {
  // heavy: 20 N and 0.3 N/mm, so it pulls from 20 / 0.3 = 66.7 mm nearer to the anchor on
  const heavy = (offsetMm: number, springs = { heavy: 1 }) =>
    slackMm(exampleEquipment, springs, { fromMm: 0, toMm: 500, offsetMm });

  it("hang slack as far as they are nearer than where they begin to pull", () => {
    expect(heavy(0)).toBe(0);
    expect(heavy(-60)).toBe(0);
    expect(heavy(-166.7)).toBeCloseTo(100.03, 1);
    expect(heavy(-900)).toBe(500);
    expect(slackMm(exampleEquipment, {}, { fromMm: 0, toMm: 500, offsetMm: -900 })).toBe(0);
  });

  it("do exactly no work on a travel that ends before they pull, whatever the rounding", () => {
    const soft = { id: "soft", label: "soft", count: 4, stiffnessNPerMm: 9.891403439751779e-303, preloadN: 0 };
    const over = { fromMm: 0, toMm: 1999.9999999995, offsetMm: -1999.9999999995 };
    expect(workJ({ ...exampleEquipment, springs: [soft] }, { soft: 2 }, over)).toBe(0);
  });

  it("are spoken of in the offer to keep springs on", () => {
    // One light is 40 N half-way; the heavy one gives that at 250 + offset = (40 - 20) / 0.3 = 66.7 mm.
    const light = exampleMove("b", { springs: { light: 1 } });
    const kept = keepSprings(examplePlan([exampleMove("a", { springs: { heavy: 1 } }), light]), light);
    expect(kept?.offsetMm).toBe(-180);
    expect(kept?.slackMm).toBeCloseTo(180 - 66.67, 1);
    expect(kept && keptSentence(exampleMoves.squat, kept, STANDARD_FORMATS)).toBe(
      "No spring change needed: stand 18 cm nearer to the anchor. The springs hang slack for the first 11 cm and do not hold the carriage there.",
    );
    expect([slackWords(0, STANDARD_FORMATS), slackWords(2, STANDARD_FORMATS)]).toEqual([
      "",
      "The springs hang slack for the first 1 cm and do not hold the carriage there.",
    ]);
  });
});

describe("how hard springs make a move", () => {
  const press: Move = { ...exampleMoves.press, loadN: [40, 120] };
  const share = (springs: Record<string, number>, move = press) =>
    springShare({ equipment: exampleEquipment }, exampleMove("a", { springs }), move);

  it("is their load half-way over the middle of the library's range, within a half and one and a half", () => {
    expect(share({ light: 2 })).toBeCloseTo(80 / 80, 9);
    expect(share({ light: 3 })).toBeCloseTo(1.5, 9);
    expect(share({ light: 4, heavy: 2 })).toBe(1.5);
    expect(share({})).toBe(0.5);
  });
  it("is 1 without a range, and where body weight is the work", () => {
    expect(springShare({ equipment: exampleEquipment }, exampleMove("a"), exampleMoves.press)).toBe(1);
    expect(share({ heavy: 2 }, { ...press, hands: "front-platform", position: "plank", pattern: "plank" })).toBe(1);
  });
});

describe("weight on the wrists", () => {
  const of = (id: string, side: "left" | "right" | "both" = "both") => wristLoad(STARTER_MOVES[id], side);

  it("comes from the pose where one is named", () => {
    expect(of("plank-slide")).toEqual({ left: 1, right: 1 });
    expect(of("forearm-plank-slide")).toEqual({ left: 0, right: 0 });
    expect(of("push-up-knees").left).toBeCloseTo(handsShare("knees").share / handsShare("high-plank").share, 9);
  });
  it("comes from position and hands where none is", () => {
    expect(of("bear-plank-hover").left).toBeGreaterThan(0.5);
    expect(of("chest-press-kneeling")).toEqual({ left: 0, right: 0 });
    expect(of("leg-press-supine")).toEqual({ left: 0, right: 0 });
  });
  it("is on the lower wrist alone in a side plank, and on none when it is done on the forearm", () => {
    const sidePlank: Move = { ...exampleMoves.plank, name: "Side plank", position: "side-lying", sides: "each" };
    expect(wristLoad(sidePlank, "left")).toEqual({ left: 1, right: 0 });
    expect(of("side-plank-lift", "left")).toEqual({ left: 0, right: 0 });
    expect(wristLoad(undefined, "left")).toEqual({ left: 0, right: 0 });
  });
});
