import { describe, expect, it } from "vitest";
import { percent, signedPercent } from "#lib/formats/percent.ts";
import {
  clockTime,
  itemName,
  plainNumber,
  plural,
  secondsWords,
  spokenSprings,
  springWords,
} from "#lib/plan/format.ts";
import { exampleEquipment, exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";

describe("words for numbers", () => {
  it("clock times", () => {
    expect([0, 5, 59.4, 59.6, 600, 3600, 5025, -5, -0.2].map(clockTime)).toEqual([
      "0:00",
      "0:05",
      "0:59",
      "1:00",
      "10:00",
      "1:00:00",
      "1:23:45",
      "-0:05",
      "0:00",
    ]);
  });

  it("lengths of time, numbers, shares, plurals", () => {
    expect([45, 0.5, 119, 120, 150].map(secondsWords)).toEqual(["45 s", "0.5 s", "119 s", "2 min", "2 min 30 s"]);
    expect([1, 1.04, 11.26].map(plainNumber)).toEqual(["1", "1", "11.3"]);
    expect([0.5, 0.2999, 0.29, 1].map(percent)).toEqual(["50%", "30%", "29%", "100%"]);
    expect([0.5, -0.0899, 0.004, -0.004, 1].map(signedPercent)).toEqual(["+50%", "−9%", "±0%", "±0%", "+100%"]);
    expect([plural(1, "spring"), plural(0, "spring"), plural(2, "of it", "of them")]).toEqual([
      "1 spring",
      "0 springs",
      "2 of them",
    ]);
  });

  it("springs by the studio's names and in its order, strange ones last", () => {
    expect(springWords(exampleEquipment, { heavy: 1, light: 2 })).toBe("two light, one heavy");
    expect(springWords(exampleEquipment, { light: 0 })).toBe("no springs");
    expect(spokenSprings(exampleEquipment, { heavy: 1, light: 2 })).toBe("two light and one heavy");
    expect(spokenSprings(exampleEquipment, { light: 0 })).toBe("no springs");
    expect(springWords(exampleEquipment, { zz: 12, light: 1 })).toBe("one light, 12 zz");
  });

  it("items as people call them", () => {
    const plan = examplePlan([]);
    expect(itemName(plan, exampleMove("a", { move: "row", side: "right" }))).toBe("Kneeling row, right");
    expect(itemName(plan, exampleMove("a"))).toBe("Squat");
    expect(itemName(plan, exampleMove("a", { move: "constructor" }))).toBe("constructor");
    expect(itemName(plan, { id: "h", kind: "heading", title: "Arms" })).toBe("the heading Arms");
    expect(itemName(plan, { id: "p", kind: "pause", seconds: 20 })).toBe("the pause of 20 s");
  });
});
