import { describe, expect, it } from "vitest";
import { standsAgain } from "#lib/acceptance/stands-again.ts";
import type { Finding } from "#lib/rules/define/types.ts";

const finding = (key: string, message: string): Finding => ({
  ...{ key, message, rule: "long-hold", level: "look", items: [key], values: {} },
});
const accepted = (message: string, at = 1, rule = "long-hold") => ({ rule, message, at });

describe("a finding that was accepted and says something else now", () => {
  const now = finding("a", "Plank: 72 s are held, 60 s at most.");
  it("is known by its sentence without the numbers, by the newest acceptance", () => {
    const [first, last] = [
      accepted("Plank: 65 s are held, 60 s at most.", 1),
      accepted("Plank: 70.5 s are held, 60 s at most.", 2),
    ];
    expect([...standsAgain([now], [last, first])]).toEqual([[now, last]]);
  });
  it("is not another's: of another rule, with other words, or one of two that are alike", () => {
    const was = accepted("Plank: 65 s are held, 60 s at most.");
    expect(standsAgain([now], [{ ...was, rule: "rushed-change" }]).size).toBe(0);
    expect(standsAgain([now], [accepted("Side plank: 65 s are held, 60 s at most.")]).size).toBe(0);
    expect(standsAgain([now, finding("b", "Plank: 80 s are held, 60 s at most.")], [was]).size).toBe(0);
    expect(standsAgain([now], []).size).toBe(0);
  });
});
