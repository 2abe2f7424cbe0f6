import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bodyMapWords, restWords, shadedGroups, shadeOf } from "#lib/body-map/shade.ts";
import { GROUPS } from "#lib/plan/schema.ts";

describe("shades", () => {
  it.each([
    ["share", 0, 0],
    ["share", 0.001, 1],
    ["share", 0.0499, 1],
    ["share", 0.05, 2],
    ["share", 0.1, 3],
    ["share", 0.2, 4],
    ["share", 1, 4],
    ["weight", 0, 0],
    ["weight", 0.2, 2],
    ["weight", 0.5, 3],
    ["weight", 1, 4],
  ] as const)("a %s of %d is shade %d", (of, value, shade) => {
    expect(shadeOf(value, of)).toBe(shade);
  });

  it("never pale with more work; nothing is shaded that does none, a number that is none included", () => {
    const value = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(value, value, fc.constantFrom("share" as const, "weight" as const), (a, b, of) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)];
        expect(shadeOf(less, of)).toBeLessThanOrEqual(shadeOf(more, of));
        expect(shadeOf(less, of) === 0).toBe(less === 0);
      }),
    );
    expect(shadeOf(Number.NaN, "share")).toBe(0);
  });
});

describe("words", () => {
  it("name the groups that work, the most first, equals in the library's order", () => {
    const shares = { calves: 0.18, chest: 0.24, biceps: 0.18, glutes: 0.004, triceps: 0 };
    expect(shadedGroups(shares, "share").map(({ name, amount, shade }) => [name, amount, shade])).toEqual([
      ["chest", "24%", 4],
      ["biceps", "18%", 3],
      ["calves", "18%", 3],
      ["glutes", "under 1%", 1],
    ]);
  });

  it("say the whole figure in sentences", () => {
    const all = Object.fromEntries(GROUPS.map((group) => [group, 1 / 16]));
    expect(bodyMapWords({ ...all, chest: 0.24, calves: 0, "hip-flexors": 0 }, "share")).toMatch(
      /^Chest 24%, upper back 6\.3%, .*\. No work: calves, hip flexors\.$/,
    );
    expect(bodyMapWords({ chest: 1, triceps: 0.5, abdominals: 0.25 }, "weight")).toBe(
      "Chest prime mover, triceps helper, abdominals a little.",
    );
    expect(bodyMapWords({}, "weight")).toBe("No muscles named.");
    expect(restWords(all)).toBe("");
  });
});
