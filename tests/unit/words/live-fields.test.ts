/** Wherever people read a plan, its live fields stand as they will be said; the file alone keeps the fields themselves. */

import { describe, expect, test } from "vitest";
import { itemWordsAsText } from "#app/_taken-out/taken-out-words.ts";
import { excerptOf } from "#app/rules/excerpt.ts";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import { buildCard } from "#lib/card/card.ts";
import { crewRows } from "#lib/card/crew-sheet.ts";
import { sheetRows } from "#lib/card/sheet.ts";
import { readerOf } from "#lib/cues/as-read.ts";
import { readThrough } from "#lib/cues/read-through.ts";
import { floorNow } from "#lib/floor/now.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { crewSheet } from "#lib/line/crew.ts";
import { quotePieces } from "#lib/margin/quote.ts";
import { CUE_KINDS, LIVE_FIELDS, type MoveItem, type Plan, type ScriptLine } from "#lib/plan/schema.ts";
import { planChanges } from "#lib/plan-diff/plan-changes.ts";
import { remedyFor } from "#lib/remedies/remedies.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";
import { trackVtt } from "#lib/tracks/tracks.ts";
import { lanesOf } from "../lanes/support.ts";

const ALL = LIVE_FIELDS.map((field) => `{${field}}`).join(", ");
const everyKind: ScriptLine[] = CUE_KINDS.map((kind) => ({ kind, text: `${kind} with ${ALL}.` }));
const item = (id: string, more: Partial<MoveItem> = {}): MoveItem =>
  exampleMove(id, { seconds: 90, transitionSeconds: 60, script: everyKind, ...more });
const plan = examplePlan([item("a"), item("b", { move: "row", side: "left", springs: { heavy: 1 } })]);
const other = examplePlan([
  item("a", { script: everyKind.map((line) => ({ ...line, text: `Now ${line.text}` })) }),
  item("b", { move: "row", side: "left", springs: { heavy: 1 }, script: [] }),
]);
const cardOf = (of: Plan) =>
  buildCard({
    studio: { name: "Tholepin Strength", town: "Port Ellery" },
    planId: "fields",
    number: 1,
    room: { id: "harbour", name: "Harbour room" },
    plan: of,
    issuedAt: 0,
    expiresAt: 86_400_000,
  });

const READINGS: Readonly<Record<string, () => unknown>> = {
  "the read-through": () => readThrough(plan).parts.map(({ lines }) => lines),
  "the lanes of the whole class": () => lanesOf(plan).lanes.map(({ cells }) => cells),
  "the crew sheet": () => crewRows(cardOf(plan)),
  "the print sheet": () => sheetRows(cardOf(plan)),
  "the crew's screen, and the demonstrator's": () =>
    Array.from({ length: 40 }, (_, n) => crewSheet(floorNow(cardOf(plan), []), n * 10)),
  "what the floor calls": () => cardOf(plan).cues.map(({ text }) => text),
  "the cue track as WebVTT": () => trackVtt("Example class", cardOf(plan).cues),
  "what changed between two editions": () => [...planChanges(plan, other), ...planChanges(other, plan)],
  "an example of a rule": () => excerptOf(plan, true, STANDARD_FORMATS),
  "an item that was taken out": () =>
    plan.items.map((one) => [itemWordsAsText(plan, one), itemWordsAsText(examplePlan([]), one)]),
  "findings and acts": () => {
    const { findings } = checkPlan(plan);
    return findings.map((finding) => [finding.message, remedyFor(plan, finding)?.label]);
  },
};

test.each(Object.entries(READINGS))("%s shows no field's name in braces", (_, read) => {
  const text = JSON.stringify(read(), (_key, value: unknown) => (typeof value === "string" ? `|${value}|` : value));
  const words = text.match(/\|(?:[^|])*\|/gu) ?? [];
  expect(words.length).toBeGreaterThan(0);
  expect(words.filter((word) => /[{}]/u.test(word))).toEqual([]);
});

describe("a line as it is read", () => {
  const asRead = readerOf(plan);
  const [a] = plan.items as MoveItem[];
  if (!a) throw new Error("the plan has items");

  test("[INV-22] says what the floor will say as the work begins", () => {
    expect(asRead(a, "{springs} on, {side}.")).toBe("One light on, both sides.");
    expect(asRead(a, "Now {move}, then {next-move}.")).toBe("Now Squat, then Kneeling row.");
    expect(asRead(a, "{seconds-left} seconds.")).toBe("Ninety seconds.");
    // Opening and closing of a minute each, two changes of a minute, two moves of 90 s: 300 s are left as the first begins.
    expect(asRead(a, "{minutes-left} minutes.")).toBe("Five minutes.");
    expect(asRead(a, "A brace {{ as typed.")).toBe("A brace { as typed.");
  });

  test("a change of fields alone is told, with words", () => {
    const typed = examplePlan([item("a", { script: [{ kind: "setup", text: "One light, stand." }] })]);
    const live = examplePlan([item("a", { script: [{ kind: "setup", text: "{springs}, stand." }] })]);
    expect(planChanges(typed, live)).toEqual([
      "A line of Squat (set-up) has other live fields and reads the same: “One light, stand.”",
    ]);
  });
});

test("a quote shows its fields by what they say, and knows them from words in braces", () => {
  const say = () => "two light";
  expect(quotePieces("{springs} on, {so} it {springs}", say)).toEqual([
    { text: "two light", field: "springs" },
    { text: " on, " },
    { text: "{so}" },
    { text: " it " },
    { text: "two light", field: "springs" },
  ]);
});
