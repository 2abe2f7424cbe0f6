/** The cue track: one voice, within its windows, true when it speaks, and it reports what it leaves out. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { classClock } from "#lib/clock/clock.ts";
import { cueTrack, headsUpTexts } from "#lib/cues/cue-track.ts";
import { linesOfTrack } from "#lib/cues/lines-of-track.ts";
import { CUE_KINDS, type MoveItem, type Plan, type ScriptLine } from "#lib/plan/schema.ts";
import { samplePlan } from "../card/sample-plan.ts";

const rowOf = (plan: Plan, id: string) => {
  const row = classClock(plan).rows.find((r) => r.item === id);
  if (!row) throw new Error(`no row ${id}`);
  return row;
};
const of = (plan: Plan, item: string, kind: string) =>
  cueTrack(plan).cues.find((cue) => cue.item === item && cue.kind === kind);

/** The sample with other lines, or another length, for the row on the left. */
function withLeft(change: Partial<MoveItem>): Plan {
  const plan = samplePlan();
  return {
    ...plan,
    items: plan.items.map((i) => (i.id === "row-left" && i.kind === "move" ? { ...i, ...change } : i)),
  };
}

const withRight = (change: Partial<MoveItem>): Plan => {
  const plan = samplePlan();
  const change1 = (i: Plan["items"][number]) => (i.id === "row-right" && i.kind === "move" ? { ...i, ...change } : i);
  return { ...plan, items: plan.items.map(change1) };
};

describe("windows", () => {
  test("set-up of the first move is said in the opening and ends when the move starts", () => {
    const plan = samplePlan();
    const said = cueTrack(plan).cues.filter((cue) => cue.kind === "setup" || cue.kind === "safety");
    expect(said[0]?.item).toBe("pike-1");
    expect(said[0]?.from).toBeGreaterThan(0);
    expect(said[1]?.to).toBeCloseTo(rowOf(plan, "pike-1").start, 1);
  });

  test("set-up is said in the change, the start at the start, breath in the first repetitions", () => {
    const plan = samplePlan();
    const left = rowOf(plan, "row-left");
    expect(of(plan, "row-left", "setup")?.from).toBe(left.transitionFrom);
    expect(of(plan, "row-left", "start")?.from).toBe(left.start);
    const said = cueTrack(plan).cues.filter((cue) => cue.item === "pike-1" && cue.from >= rowOf(plan, "pike-1").start);
    expect(said.map(({ kind }) => kind)).toEqual(["start", "breath", "form", "heads-up", "count-in"]);
    expect(said[1]?.to).toBeLessThanOrEqual(rowOf(plan, "pike-1").start + 20);
  });

  test("lines of the work are spread between the start and the heads-up", () => {
    const form = (text: string): ScriptLine => ({ kind: "form", text });
    const plan = withLeft({
      seconds: 90,
      script: [{ kind: "start", text: "Pull." }, form("Long neck."), form("Soft knees."), form("Ribs in.")],
    });
    const said = cueTrack(plan).cues.filter((cue) => cue.item === "row-left" && cue.kind !== "setup");
    const silences = said.slice(1, 5).map((cue, n) => cue.from - (said[n]?.to ?? 0));
    expect(Math.max(...silences) - Math.min(...silences)).toBeLessThan(0.25);
  });
});

describe("a line with a moment of its own", () => {
  const saidAt = (script: ScriptLine[], more: Partial<MoveItem> = {}) => {
    const plan = withLeft({ seconds: 60, script, ...more });
    const { cues, dropped } = cueTrack(plan);
    const { start, end } = rowOf(plan, "row-left");
    return { start, end, dropped, cues: cues.filter((cue) => cue.item === "row-left") };
  };

  test.each([
    ["so long after the start", { afterSeconds: 20 }, 20],
    ["so long before the end", { leftSeconds: 25 }, 35],
    ["at the start", { afterSeconds: 0 }, 0],
    ["at the start, when the item is shorter than its moment", { leftSeconds: 90 }, 0],
    ["between two tenths", { afterSeconds: 12.34 }, 12.3],
  ] as const)("begins %s", (_, at, seconds) => {
    const { start, cues } = saidAt([
      { kind: "form", text: "Long neck, soft knees." },
      { kind: "focus", text: "Half of it is done.", at },
      { kind: "form", text: "Ribs in." },
    ]);
    expect(cues.find(({ kind }) => kind === "focus")?.from).toBeCloseTo(start + seconds, 5);
    expect(cues.filter(({ kind }) => kind === "form")).toHaveLength(2);
  });

  test("is said before the count-in when its moment is too late", () => {
    const { end, cues } = saidAt([{ kind: "form", text: "Nearly there.", at: { afterSeconds: 600 } }]);
    const form = cues.find(({ kind }) => kind === "form");
    expect(form?.to).toBeLessThanOrEqual(end - 3);
    expect(form?.to).toBeGreaterThan(end - 3.2);
  });

  test("may be said before a line of its kind that was written first, and is known by its place in the script", () => {
    const script: ScriptLine[] = [
      { kind: "form", text: "Last.", at: { leftSeconds: 20 } },
      { kind: "form", text: "Middle." },
      { kind: "form", text: "First.", at: { afterSeconds: 5 } },
    ];
    const { cues } = saidAt(script);
    const form = cues.filter(({ kind }) => kind === "form");
    expect(form.map(({ text }) => text)).toEqual(["First.", "Middle.", "Last."]);
    expect(form.map(({ line }) => line)).toEqual([2, 1, 0]);
    const plan = withLeft({ seconds: 60, script });
    const lines = linesOfTrack(cueTrack(plan))(plan.items.find(({ id }) => id === "row-left") as MoveItem);
    expect(lines.map(({ line, cue }) => [line.text, cue?.text])).toEqual(script.map(({ text }) => [text, text]));
  });

  test("is set aside with its shortage when another line has the same moment", () => {
    const at = { afterSeconds: 10 };
    const { dropped, cues } = saidAt([
      { kind: "form", text: "Long neck, soft knees.", at },
      { kind: "harder", text: "Go lower.", at },
    ]);
    expect(cues.some(({ kind }) => kind === "form")).toBe(true);
    expect(dropped).toMatchObject([{ kind: "harder", text: "Go lower." }]);
    expect(dropped[0]?.shortBy).toBeGreaterThan(0);
  });

  test("set-up stays in the change, safety is said when it is wanted", () => {
    const at = { afterSeconds: 20 };
    const { start, cues } = saidAt([
      { kind: "setup", text: "Kneel and take the handle.", at },
      { kind: "safety", text: "Stop if it pinches.", at },
    ]);
    expect(cues.find(({ kind }) => kind === "setup")?.to).toBeLessThanOrEqual(start);
    expect(cues.find(({ kind }) => kind === "safety")?.from).toBe(start + 20);
  });

  test("says the time that is left when it is said", () => {
    const { end, cues } = saidAt([{ kind: "form", text: "{seconds-left} seconds.", at: { leftSeconds: 20 } }]);
    expect(cues.find(({ kind }) => kind === "form")).toMatchObject({ from: end - 20, text: "Twenty seconds." });
  });
});

describe("the plan's own calls", () => {
  test("the heads-up comes 15 s before the end, the count-in fills the last three", () => {
    const plan = samplePlan();
    const { end } = rowOf(plan, "row-left");
    expect(of(plan, "row-left", "heads-up")).toMatchObject({ from: end - 15 });
    expect(of(plan, "row-left", "heads-up")?.text).toBe(
      "Coming up: Kneeling one-arm row. Springs stay, put the handle down, right side, handle in the other hand.",
    );
    expect(of(plan, "row-left", "count-in")).toMatchObject({ from: end - 3, to: end, text: "three, two, one" });
  });

  test("a call says the acts in the order people do them, then which springs are on", () => {
    const plan = samplePlan();
    const [row, pike] = [plan.items[4], plan.items[1]];
    if (row?.kind !== "move" || pike?.kind !== "move") throw new Error("the moves of the class");
    const back = { ...plan, items: [row, { ...pike, id: "pike-2" }] };
    expect(of(back, "row-left", "heads-up")?.text).toBe(
      "Coming up: Forearm plank to pike. Carriage home, put the handle down, take off one heavy, put on one light, " +
        "face the front, come to a plank, feet on the back platform, hands on the front bars. Now on: one light.",
    );
    expect(headsUpTexts(back, row)).toEqual([
      of(back, "row-left", "heads-up")?.text,
      expect.stringMatching(/hands on the front bars\.$/),
      "Coming up: Forearm plank to pike.",
    ]);
  });

  test("the call before a pause and before the end says so", () => {
    expect(of(samplePlan(), "pike-1", "heads-up")?.text).toBe("Coming up: a pause of 20 seconds.");
    expect(of(samplePlan(), "row-right", "heads-up")?.text).toBe("Coming up: the close.");
  });

  test("the plan's own seconds for the calls are used, 0 leaves them out", () => {
    const plan = { ...samplePlan(), headsUpSeconds: 20, countInSeconds: 5 };
    expect(of(plan, "pike-1", "heads-up")?.from).toBe(rowOf(plan, "pike-1").end - 20);
    expect(of(plan, "pike-1", "count-in")?.text).toBe("five, four, three, two, one");
    const silent = cueTrack({ ...samplePlan(), headsUpSeconds: 0, countInSeconds: 0 });
    expect(silent.cues.some((cue) => cue.kind === "heads-up" || cue.kind === "count-in")).toBe(false);
  });
});

describe("live fields", () => {
  test("are true when they are said", () => {
    const plan = samplePlan();
    const form = of(plan, "pike-1", "form");
    const { end } = rowOf(plan, "pike-1");
    expect(end - (form?.from ?? 0)).toBeCloseTo(31, 0);
    expect(form?.text).toBe("Long neck, about thirty seconds to go.");
    expect(of(plan, "row-left", "setup")?.text).toBe("Carriage home, one heavy, kneel to face the back.");
    expect(of(plan, "row-left", "start")?.text).toBe("Pull with the left arm.");
    expect(of(plan, "row-right", "start")?.text).toBe("Other arm: Kneeling one-arm row.");
  });

  test("begin a sentence with a capital", () => {
    const plan = withLeft({ script: [{ kind: "start", text: "{side} side. {side} foot up, {side} arm long." }] });
    expect(of(plan, "row-left", "start")?.text).toBe("Left side. Left foot up, left arm long.");
  });

  test("a doubled brace is a brace, in lines and in names", () => {
    const plan = withLeft({ script: [{ kind: "start", text: "{{side} is {side}" }] });
    expect(of(plan, "row-left", "start")?.text).toBe("{side} is left");
    const row = plan.moves.row;
    const named = { ...plan, moves: { ...plan.moves, row: { ...row, name: "Row {side}" } as typeof row & object } };
    expect(of(named, "row-left", "heads-up")?.text).toContain("Row {side}");
  });

  test("minutes left are of the class, next move skips pauses", () => {
    const plan = withLeft({ script: [{ kind: "start", text: "{minutes-left} minutes, then {next-move}" }] });
    // Starts at 130 s of 265 s: 2 min 15 s are left.
    expect(of(plan, "row-left", "start")?.text).toBe("About two and a half minutes, then Kneeling one-arm row");
  });
});

describe("what does not fit", () => {
  const long =
    "Draw the elbow along the ribs and let the shoulder blade slide towards the spine without a twist. ".repeat(4);

  test("a form line gives way to set-up, start and safety", () => {
    const plan = withLeft({
      seconds: 20,
      transitionSeconds: 4,
      script: [
        { kind: "form", text: long },
        { kind: "safety", text: "Keep a soft elbow and stop if the shoulder hurts." },
        { kind: "setup", text: "Take the handle and kneel facing the back." },
        { kind: "start", text: "Pull." },
      ],
    });
    const { cues, dropped } = cueTrack(plan);
    const said = cues.filter((cue) => cue.item === "row-left").map((cue) => cue.kind);
    expect(said).toEqual(expect.arrayContaining(["safety", "setup", "start"]));
    expect(dropped.find((line) => line.kind === "form")).toMatchObject({ item: "row-left", text: long });
    expect(dropped.find((line) => line.kind === "form")?.shortBy).toBeGreaterThan(0);
  });

  test("set-up that is too long for its change begins after the heads-up before it, and is still over at the start", () => {
    const plan = withRight({
      transitionSeconds: 0,
      script: [{ kind: "setup", text: "Other hand, other knee, same spring." }],
    });
    const right = rowOf(plan, "row-right");
    const setup = of(plan, "row-right", "setup");
    expect(setup?.to).toBeLessThanOrEqual(right.start);
    expect(setup?.from).toBeGreaterThanOrEqual(of(plan, "row-left", "heads-up")?.to ?? Number.NaN);
  });

  test("set-up that does not fit before the start is set aside with its shortage", () => {
    const plan = withRight({ transitionSeconds: 0, script: [{ kind: "setup", text: long }] });
    const [lost] = cueTrack(plan).dropped.filter((line) => line.item === "row-right");
    expect(lost).toMatchObject({ kind: "setup", text: long });
    expect(lost?.shortBy).toBeGreaterThan(5);
  });

  test("a shorter heads-up is said when the full one would cost another line", () => {
    const talk = "Draw the elbow along the ribs. ".repeat(3);
    const kinds = (seconds: number) => {
      const plan = withLeft({
        seconds,
        script: [
          { kind: "start", text: "Pull." },
          { kind: "form", text: talk },
        ],
      });
      return { call: of(plan, "row-left", "heads-up")?.text, form: of(plan, "row-left", "form") };
    };
    expect(kinds(60).call).toContain("handle in the other hand");
    const tight = [20, 18, 16, 15, 14, 13, 12, 11]
      .map(kinds)
      .find(({ call }) => call === "Coming up: Kneeling one-arm row.");
    expect(tight?.form).toBeDefined();
  });
});

test("an empty plan says nothing", () => {
  expect(cueTrack({ ...samplePlan(), items: [] })).toEqual({ cues: [], dropped: [], talkSeconds: 0, talkShare: 0 });
});

describe("for any script", () => {
  const words = fc.array(fc.constantFrom("hips", "reach", "breathe", "out", "{side}", "{seconds-left}", "{springs}"), {
    minLength: 1,
    maxLength: 25,
  });
  const line: fc.Arbitrary<ScriptLine> = fc.record({
    kind: fc.constantFrom(...CUE_KINDS),
    text: words.map((w) => w.join(" ")),
    at: fc.option(
      fc.oneof(
        fc.record({ afterSeconds: fc.integer({ min: 0, max: 100 }) }),
        fc.record({ leftSeconds: fc.integer({ min: 0, max: 100 }) }),
      ),
      { nil: undefined, freq: 3 },
    ),
  });
  const plans = fc
    .array(
      fc.record({
        seconds: fc.integer({ min: 5, max: 90 }),
        transition: fc.integer({ min: 0, max: 25 }),
        script: fc.array(line, { maxLength: 7 }),
      }),
      { minLength: 1, maxLength: 5 },
    )
    .map((parts): Plan => {
      const items = parts.map(
        (part, n): MoveItem => ({
          id: `i${n}`,
          kind: "move",
          move: n % 2 ? "row" : "pike",
          side: n % 2 ? "left" : "both",
          seconds: part.seconds,
          springs: { light: n % 3 },
          transitionSeconds: part.transition,
          script: part.script,
        }),
      );
      return { ...samplePlan(), items };
    });

  test("lines never overlap, keep their windows, and each is said or dropped exactly once", () => {
    fc.assert(
      fc.property(plans, (plan) => {
        const { cues, dropped, talkShare } = cueTrack(plan);
        for (const [n, cue] of cues.entries()) {
          expect(cue.to).toBeGreaterThan(cue.from);
          expect(cue.from).toBeGreaterThanOrEqual(cues[n - 1]?.to ?? 0);
          const row = rowOf(plan, cue.item);
          const before = classClock(plan).rows[plan.items.findIndex((item) => item.id === cue.item) - 1];
          const item = plan.items.find(({ id }) => id === cue.item);
          const line = item?.kind === "move" && cue.line !== undefined ? item.script?.[cue.line] : undefined;
          if (cue.kind === "setup" || (cue.kind === "safety" && !line?.at)) {
            expect(cue.to).toBeLessThanOrEqual(row.start);
            expect(cue.from).toBeGreaterThanOrEqual(before ? Math.max(before.start, before.end - 15) : 0);
          } else {
            expect(cue.from).toBeGreaterThanOrEqual(row.start);
            expect(cue.to).toBeLessThanOrEqual(row.end);
          }
          if (cue.kind === "heads-up") expect(cue.from).toBeGreaterThanOrEqual(row.end - 15);
          if (cue.kind === "count-in") expect(cue.to).toBe(row.end);
        }
        for (const item of plan.items) {
          if (item.kind !== "move") continue;
          const spoken = (item.script ?? []).filter((l) => l.kind !== "crew").map((l) => l.kind);
          const found = [...cues, ...dropped].filter((c) => c.item === item.id).map((c) => c.kind);
          expect(found.filter((kind) => kind !== "heads-up" && kind !== "count-in").sort()).toEqual(spoken.sort());
        }
        expect(dropped.every((l) => l.shortBy >= 0)).toBe(true);
        expect(talkShare).toBeLessThanOrEqual(1);
      }),
      { numRuns: 200 },
    );
  });

  test("set-up, start and safety are set aside only when they would not fit with everything else gone", () => {
    const must = ["setup", "start", "safety"];
    // A moment cannot give way, so a line that has one may be set aside sooner.
    const withoutMoments = (plan: Plan): Plan => ({
      ...plan,
      items: plan.items.map((item) =>
        item.kind === "move" && item.script
          ? { ...item, script: item.script.map(({ kind, text }) => ({ kind, text })) }
          : item,
      ),
    });
    const lost = (plan: Plan) => cueTrack(plan).dropped.filter((line) => must.includes(line.kind)).length;
    const bare = (plan: Plan): Plan => ({
      ...plan,
      countInSeconds: 0,
      items: plan.items.map((item) =>
        item.kind === "move"
          ? { ...item, script: (item.script ?? []).filter((line) => must.includes(line.kind)) }
          : item,
      ),
    });
    fc.assert(
      fc.property(plans.map(withoutMoments), (plan) => {
        expect(lost(plan)).toBe(lost(bare(plan)));
      }),
      { numRuns: 200 },
    );
  });
});
