/** The studio's stock remarks: who reads and writes them, what they are linked to, and how they go out of use. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { listRecord } from "#db/repos/record-repo.ts";
import { addRemark, changeRemark, listRemarks, newRemarkSchema } from "#server/remarks/remarks.ts";
import { must, openStudio, outcome, type PlanStudio } from "#tests/support/plan-studio.ts";

let s: PlanStudio;
beforeEach(() => {
  s = openStudio();
});
afterEach(() => s.stop());

const NONE = { ruleId: null, moveId: null };
const words = "Say it once, then let them work.";

describe("stock remarks", () => {
  it("are written by leads and read by those who comment on plans", () => {
    const { ines, marta, jonas, petra, sam } = s.people;
    const { id } = must(addRemark(s.app, ines, { words, ...NONE }));
    for (const who of [ines, marta, jonas])
      expect(must(listRemarks(s.app, who)).remarks).toEqual([{ id, words, ...NONE, inUse: true }]);
    for (const who of [petra, sam]) expect(outcome(listRemarks(s.app, who))).toBe("no-right");
    expect(outcome(listRemarks(s.app, null))).toBe("not-signed-in");
    for (const who of [marta, jonas, petra, sam]) {
      expect(outcome(addRemark(s.app, who, { words, ...NONE }))).toBe("no-right");
      expect(outcome(changeRemark(s.app, who, id, { words: "Hm" }))).toBe("no-right");
      expect(outcome(listRemarks(s.app, who, true))).toBe("no-right");
    }
  });

  it("are linked to a rule or a move that there is", () => {
    const { ines } = s.people;
    must(addRemark(s.app, ines, { words, ruleId: "total-length", moveId: null }));
    must(addRemark(s.app, ines, { words, ruleId: null, moveId: "kneeling-row" }));
    expect(outcome(addRemark(s.app, ines, { words, ruleId: "no-rule", moveId: null }))).toBe("no-such-rule");
    expect(outcome(addRemark(s.app, ines, { words, ruleId: null, moveId: "no-move" }))).toBe("no-such-move");
    expect(outcome(addRemark(s.app, ines, { words, ruleId: "total-length", moveId: "kneeling-row" }))).toBe(
      "rule-and-move",
    );
  });

  it("go out of use and come back, and every change is recorded", () => {
    const { ines, jonas } = s.people;
    const { id } = must(addRemark(s.app, ines, { words, ...NONE }));
    must(changeRemark(s.app, ines, id, { words: "Say it once." }));
    must(changeRemark(s.app, ines, id, { inUse: false }));
    expect(must(listRemarks(s.app, jonas)).remarks).toEqual([]);
    expect(must(listRemarks(s.app, ines, true)).remarks).toMatchObject([{ words: "Say it once.", inUse: false }]);
    must(changeRemark(s.app, ines, id, { inUse: true }));
    expect(must(listRemarks(s.app, jonas)).remarks).toHaveLength(1);
    expect(outcome(changeRemark(s.app, ines, "nothing", { inUse: true }))).toBe("not-found");
    expect(listRecord(s.db, 0, 10).map(({ kind }) => kind)).toEqual([
      "remark-added",
      "remark-changed",
      "remark-out-of-use",
      "remark-in-use-again",
    ]);
  });

  it("have 1 to 600 characters", () => {
    const takes = (text: string) => newRemarkSchema.safeParse({ words: text, ...NONE }).success;
    for (const text of ["", "  ", "x".repeat(601)]) expect(takes(text)).toBe(false);
    expect(takes("x".repeat(600))).toBe(true);
  });
});
