import { describe, expect, it } from "vitest";
import { countWords, slipsOf } from "#lib/margin/slips.ts";
import type { Anchor, ThreadView } from "#lib/protocol/messages.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { planWithScript } from "../editor/plan-with-script.ts";

const plan = planWithScript([]);
const finding = (rule: string, level: Finding["level"], items: string[]): Finding => ({
  rule,
  level,
  items,
  message: "",
  values: {},
});
const thread = (id: string, anchor: Anchor, settled = false): ThreadView => ({
  id,
  anchor,
  settled,
  leadSpoke: false,
  comments: [],
});
const about = (slips: ReturnType<typeof slipsOf>) => slips.map((s) => (s.kind === "finding" ? s.finding.rule : s.id));

describe("the margin's slips", () => {
  const findings = [
    finding("info-right", "info", ["row-right"]),
    finding("must-row", "must", ["row", "row-right"]),
    finding("whole", "look", []),
    finding("look-row", "look", ["row"]),
  ];
  const threads = [
    thread("t-row", { kind: "item", itemId: "row" }),
    thread("t-gone", { kind: "item", itemId: "taken-out" }),
    thread("t-old", { kind: "plan" }, true),
  ];

  it("are in plan order, those about the whole plan or about removed items on top, the most serious first", () => {
    const slips = slipsOf({ plan, findings, threads, showSettled: false });
    expect(about(slips)).toEqual(["whole", "t-gone", "must-row", "look-row", "t-row", "info-right"]);
    expect(slips[1]?.about).toBeNull();
  });
  it("show settled threads only when asked", () => {
    expect(about(slipsOf({ plan, findings: [], threads, showSettled: true }))).toEqual(["t-gone", "t-old", "t-row"]);
  });
  it("can be those of one item, including findings that name it second", () => {
    expect(about(slipsOf({ plan, findings, threads, showSettled: false, only: "row-right" }))).toEqual([
      "must-row",
      "info-right",
    ]);
  });
  it("have unique ids that stay the same at every check", () => {
    const twice = [finding("theme", "look", []), finding("theme", "look", [])];
    const ids = slipsOf({ plan, findings: twice, threads, showSettled: true }).map((s) => s.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(slipsOf({ plan, findings: twice, threads, showSettled: true }).map((s) => s.id)).toEqual(ids);
  });
  it("are counted in words", () => {
    expect(countWords(findings, threads)).toBe("1 must fix, 2 look again, 1 for information, 2 open threads");
    expect(countWords([], [])).toBe("nothing found");
  });
});

describe("a thread on a finding", () => {
  const key = "must-row:x:row,row-right";
  const found = { ...finding("must-row", "must", ["row", "row-right"]), key };
  const other = { ...finding("look-row", "look", ["row"]), key: "look-row:x:row" };
  const on = thread("t-on", { kind: "finding", rule: "must-row", itemIds: ["row", "row-right"], key });
  const item = thread("t-item", { kind: "item", itemId: "row" });
  const shown = (findings: readonly Finding[], only: string | null) =>
    about(slipsOf({ plan, findings, threads: [item, on], showSettled: false, only }));

  it("stands right under it, in the plates of all its items", () => {
    expect(shown([other, found], "row")).toEqual(["must-row", "t-on", "look-row", "t-item"]);
    expect(shown([other, found], "row-right")).toEqual(["must-row", "t-on"]);
  });

  it("stays among the threads of its items once it is not found any more", () => {
    expect(shown([other], "row")).toEqual(["look-row", "t-item", "t-on"]);
    expect(shown([], "row-right")).toEqual(["t-on"]);
  });

  it("about the whole class stands with the class", () => {
    const whole = { ...finding("whole", "look", []), key: "whole:x:" };
    const thread_ = thread("t-whole", { kind: "finding", rule: "whole", itemIds: [], key: "whole:x:" });
    const slips = slipsOf({ plan, findings: [whole], threads: [thread_], showSettled: false, only: null });
    expect(about(slips)).toEqual(["whole", "t-whole"]);
  });
});
