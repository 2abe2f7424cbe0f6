/** A class in small, as text and back: the same parts, and nothing from a text that is damaged. */
import { describe, expect, it } from "vitest";
import { classStrip, readStrip, stripText } from "#lib/clock/class-strip.ts";
import { classClock } from "#lib/clock/clock.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";

const plan = examplePlan(
  [
    { id: "h", kind: "heading", title: "Warm-up" },
    exampleMove("a", { seconds: 45 }),
    { id: "p", kind: "pause", text: "Water", seconds: 30 },
    exampleMove("b", { move: "unheard-of", seconds: 60, transitionSeconds: 10 }),
  ],
  { openingSeconds: 20 },
);

describe("a class in small", () => {
  const strip = classStrip(plan, classClock(plan).rows);

  it("has moves and pauses at their times, and no heading", () => {
    expect(strip.map(({ seconds, pattern }) => [seconds, pattern])).toEqual([
      [45, "squat"],
      [30, null],
      [60, null],
    ]);
    const [a, p, b] = strip;
    expect(a?.from).toBeGreaterThanOrEqual(20);
    expect(p?.from).toBeGreaterThanOrEqual((a?.from ?? 0) + 45);
    expect(b?.from).toBe((p?.from ?? 0) + 30 + 10);
  });

  it("comes back from its text", () => {
    expect(readStrip(stripText(strip))).toEqual(strip);
  });

  it.each(["", "x", "60", "60 -5 push", "60 NaN push", ",,,"])("has nothing from “%s”", (text) => {
    expect(readStrip(text)).toEqual([]);
  });
});
