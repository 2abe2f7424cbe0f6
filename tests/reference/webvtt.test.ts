/**
 * The tracks of an edition against the W3C WebVTT specification ("WebVTT file structure") and the timestamp lists of
 * web-platform-tests (webvtt/parsing/file-parsing, BSD-3-Clause), and read back by node-webvtt, an independent parser.
 */
import webvtt from "node-webvtt";
import { describe, expect, test } from "vitest";
import { buildCard } from "#lib/card/card.ts";
import { chaptersVtt, cuesVtt } from "#lib/tracks/tracks.ts";
import { vttFile, vttText, vttTimestamp } from "#lib/tracks/webvtt.ts";
import fixture from "#tests/fixtures/webvtt-timestamps.json" with { type: "json" };
import { samplePlan } from "#tests/unit/card/sample-plan.ts";

const card = buildCard({
  studio: { name: "Tholepin Strength", town: "Port Ellery" },
  planId: "rows",
  number: 2,
  room: { id: "harbour", name: "Harbour room" },
  plan: samplePlan(),
  issuedAt: 0,
  expiresAt: 86_400_000,
});

/** A timestamp exactly as in the specification, section "WebVTT timestamp". */
const TIMESTAMP = /^(?:(\d{2,}):)?([0-5]\d):([0-5]\d)\.(\d{3})$/;

describe("timestamps", () => {
  test("are in a form that every reader accepts, and mean the right time", () => {
    const seconds = [0, 1, 0.0004, 0.0005, 59.9996, 61.25, 3599.999, 3600, 359_999.5, 400_000];
    for (const s of seconds) {
      const written = vttTimestamp(s);
      const [, h, m, sec, ms] = TIMESTAMP.exec(written) ?? [];
      expect(Number(h) * 3600 + Number(m) * 60 + Number(sec) + Number(ms) / 1000).toBeCloseTo(s, 2);
      expect(fixture.parser_rejects).not.toContain(written);
    }
    expect(fixture.parser_accepts).toContain(vttTimestamp(0));
    expect(fixture.parser_accepts).toContain(vttTimestamp(1));
  });

  test("never match the published list of bad timestamps", () => {
    for (const bad of fixture.parser_rejects) expect(bad).not.toMatch(/^\d{2,}:[0-5]\d:[0-5]\d\.\d{3}$/);
  });

  test("refuse a time that cannot be on a track", () => {
    for (const bad of [-0.001, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => vttTimestamp(bad)).toThrow(RangeError);
  });
});

describe("payload", () => {
  test("words can never become a tag, entity, arrow, line break or NUL", () => {
    expect(vttText("a --> b <i>&amp;\n\nc\0")).toBe("a --&gt; b &lt;i&gt;&amp;amp; c");
  });

  test("leaves out cues without words or time and puts enclosing cues first", () => {
    const file = vttFile("t", [
      { id: "in", from: 1, to: 2, text: "inside" },
      { id: "out", from: 1, to: 9, text: "around" },
      { id: "none", from: 2, to: 2.0001, text: "no time" },
      { id: "blank", from: 3, to: 4, text: " \n " },
    ]);
    expect(webvtt.parse(file).cues.map((cue) => cue.identifier)).toEqual(["out", "in"]);
  });
});

const unescaped = (text: string) => text.replaceAll("&lt;", "<").replaceAll("&gt;", ">").replaceAll("&amp;", "&");

describe.each([
  ["cues", cuesVtt(card)],
  ["chapters", chaptersVtt(card)],
])("%s track", (_, file) => {
  const read = webvtt.parse(file, { strict: true });

  test("an independent parser accepts all of it", () => {
    expect(read.valid).toBe(true);
    expect(read.errors).toEqual([]);
    expect(read.cues).toHaveLength(file.split("-->").length - 1);
  });

  test("names in its head the edition, as the device shows it, and has the safety words", () => {
    const [head, , ...rest] = file.split("\n");
    expect(head).toMatch(
      new RegExp(`^WEBVTT Rows &amp; reaches &lt;short&gt;, edition 2, ${card.edition.shortName}, `),
    );
    // A comment block as in the specification, section "WebVTT comment block": without an arrow, ended by an empty line.
    expect(rest.slice(0, rest.indexOf(""))).toEqual(["NOTE", ...card.cautions.note]);
    expect(card.cautions.note.join(" ")).toMatch(/clinician.*maker's manual.*Local rules.*licensed/);
  });

  test("starts never go back, ends come after starts, ids are unique", () => {
    const starts = read.cues.map((cue) => cue.start);
    expect(starts).toEqual([...starts].sort((a, b) => a - b));
    expect(read.cues.every((cue) => cue.end > cue.start)).toBe(true);
    expect(new Set(read.cues.map((cue) => cue.identifier)).size).toBe(read.cues.length);
  });
});

test("the cue track says what the card says, when the card says it", () => {
  const read = webvtt.parse(cuesVtt(card)).cues.map((cue) => [cue.start, cue.end, unescaped(cue.text)]);
  expect(read).toEqual(card.cues.map((cue) => [cue.from, cue.to, cue.text]));
});

test("chapters: opening, blocks with their moves inside, closing; times worked by hand", () => {
  const read = webvtt.parse(chaptersVtt(card)).cues.map((cue) => [unescaped(cue.text), cue.start, cue.end]);
  expect(read).toEqual([
    ["Opening", 0, 30],
    ["Trunk", 30, 110],
    ["Forearm plank to pike", 30, 90],
    ["Pause", 90, 110],
    ["Pull --> and reach", 110, 225],
    ["Kneeling one-arm row, left", 110, 175],
    ["Kneeling one-arm row, right", 175, 225],
    ["Closing", 225, 265],
  ]);
});
