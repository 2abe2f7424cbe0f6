import { describe, expect, it } from "vitest";
import { matchRemarks, type Remark, remarkAsked } from "#lib/remarks/match-remarks.ts";

const REMARKS: Remark[] = [
  { id: "any", words: "Say it once, then let them work.", ruleId: null, moveId: null },
  { id: "rule", words: "Give the change the time that it takes.", ruleId: "rushed-change", moveId: null },
  { id: "move", words: "Tell them where the wrists go.", ruleId: null, moveId: "plank" },
  { id: "other", words: "Count the last three, not every one.", ruleId: "counted-out", moveId: null },
];
const offered = (typed: string, place = {}) => {
  const asked = remarkAsked(typed, typed.length);
  return asked ? matchRemarks(REMARKS, asked, place, 8).map(({ id }) => id) : null;
};

describe("stock remarks", () => {
  it("are all offered after a slash, those that belong here first", () => {
    expect(offered("/")).toEqual(["any", "rule", "move", "other"]);
    expect(offered("/", { ruleId: "counted-out" })).toEqual(["other", "any", "rule", "move"]);
    expect(offered("Well. /", { moveId: "plank" })).toEqual(["move", "any", "rule", "other"]);
  });

  it("narrow with every word, from the beginning of a word, in any case", () => {
    expect(offered("/the TIM")).toEqual(["rule"]);
    expect(offered("/ime")).toEqual([]);
    expect(offered("/count")).toEqual(["other"]);
  });

  it("are not offered for ordinary words, wherever they occur in a remark", () => {
    for (const typed of ["Too short a time", "Please once", "wrists", "then let them work"]) {
      expect(offered(typed)).toBeNull();
      expect(offered(typed, { ruleId: "rushed-change", moveId: "plank" })).toBeNull();
    }
  });

  it("replace the slash with what follows it", () => {
    expect(remarkAsked("See /giv", 8)).toEqual({ from: 4, sought: "giv" });
  });

  it("are not asked for by a slash inside a word or on another line", () => {
    expect(remarkAsked("12/", 3)).toBeNull();
    expect(remarkAsked("/one\ntwo ", 9)).toBeNull();
  });
});
