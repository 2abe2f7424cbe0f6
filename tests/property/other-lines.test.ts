/** Lines of a script after edits at random: the list explains exactly them, and nothing that stands is told as changed. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CueKind, ScriptLine } from "#lib/plan/schema.ts";
import { type OtherLine, otherLines } from "#lib/plan-diff/other-lines.ts";

const KINDS: readonly CueKind[] = ["setup", "start", "breath", "form", "focus"];
const kind = fc.constantFrom(...KINDS);
/** Lines of which no two share a word. */
const lineOf = (n: number, of: CueKind, extra = ""): ScriptLine => ({
  kind: of,
  text: `${["a", "b", "c", "d", "e"].map((word) => `${word}${n}`).join(" ")}${extra}`,
});

const edit = fc.record({
  act: fc.constantFrom("insert", "remove", "words", "kind", "time", "move"),
  at: fc.nat(),
  to: fc.nat(),
  kind,
});
const kinds = fc.array(kind, { maxLength: 14 });

/** Each line with where it came from: the old one, if it did, and whether it was written in or moved. */
interface Kept {
  readonly from: ScriptLine | null;
  readonly line: ScriptLine;
  readonly touched: boolean;
}

function edited(
  start: readonly ScriptLine[],
  edits: readonly { act: string; at: number; to: number; kind: CueKind }[],
) {
  const lines: Kept[] = start.map((line) => ({ from: line, line: { ...line }, touched: false }));
  edits.forEach(({ act, at, to, kind: other }, n) => {
    const i = lines.length === 0 ? 0 : at % lines.length;
    const [kept] = lines.slice(i);
    if (act === "insert" || !kept) lines.splice(i, 0, { from: null, line: lineOf(1000 + n, other), touched: true });
    else if (act === "remove") lines.splice(i, 1);
    else if (act === "move") lines.splice(to % lines.length, 0, { ...(lines.splice(i, 1)[0] as Kept), touched: true });
    else lines[i] = { ...kept, line: written(kept.line, act, other, n), touched: true };
  });
  return lines;
}

function written(line: ScriptLine, act: string, other: CueKind, n: number): ScriptLine {
  if (act === "words") return { ...line, text: `${line.text} x${n}` };
  return act === "kind" ? { ...line, kind: other } : { ...line, at: { afterSeconds: n + 1 } };
}

const wasOf = (other: OtherLine<ScriptLine>) => ("was" in other ? [other.was] : []);
const isOf = (other: OtherLine<ScriptLine>) => ("is" in other ? [other.is] : []);

describe("lines that are others than before", () => {
  it("are told so that the old lines and the list give the new ones", () => {
    fc.assert(
      fc.property(kinds, fc.array(edit, { maxLength: 8 }), (of, edits) => {
        const old = of.map((one, n) => lineOf(n, one));
        const now = edited(old, edits).map(({ line }) => line);
        const others = otherLines(old, now);
        const [went, come] = [new Set(others.flatMap(wasOf)), new Set(others.flatMap(isOf))];
        // What is not told stands: the same lines in the same order.
        expect(now.filter((line) => !come.has(line))).toEqual(old.filter((line) => !went.has(line)));
        expect(others.flatMap(wasOf)).toHaveLength(went.size);
        expect(others.flatMap(isOf)).toEqual(now.filter((line) => come.has(line)));
        for (const other of others) if (other.how === "moved") expect(other.was).toEqual(other.is);
      }),
      { seed: 71, numRuns: 2000 },
    );
  });

  it("are no more than were edited, and nothing that stands is told as changed", () => {
    fc.assert(
      fc.property(kinds, fc.array(edit, { maxLength: 8 }), (of, edits) => {
        const old = of.map((one, n) => lineOf(n, one));
        const kept = edited(old, edits);
        const others = otherLines(
          old,
          kept.map(({ line }) => line),
        );
        expect(others.length).toBeLessThanOrEqual(2 * edits.length);
        const stands = new Set(kept.flatMap(({ from, touched }) => (from && !touched ? [from] : [])));
        // A line that nobody touched may be told as moved, when another one passed it; never in another way.
        for (const other of others)
          if (other.how !== "moved") for (const was of wasOf(other)) expect(stands.has(was)).toBe(false);
      }),
      { seed: 72, numRuns: 2000 },
    );
  });

  it("without moves are exactly those, and changed lines are told against what they were", () => {
    const noMove = edit.filter(({ act }) => act !== "move");
    fc.assert(
      fc.property(kinds, fc.array(noMove, { maxLength: 6 }), (of, edits) => {
        const old = of.map((one, n) => lineOf(n, one));
        const kept = edited(old, edits);
        const others = otherLines(
          old,
          kept.map(({ line }) => line),
        );
        const touched = kept.filter(({ from, line }) => !from || JSON.stringify(from) !== JSON.stringify(line));
        expect(others.flatMap(isOf)).toEqual(touched.map(({ line }) => line));
        const wrong = others.filter(
          (other) =>
            other.how === "changed" && kept.some(({ from, line }) => line === other.is && from && from !== other.was),
        );
        expect(wrong).toEqual([]);
      }),
      { seed: 73, numRuns: 2000 },
    );
  });

  it("with two insertions tells two lines, though all others are in other places", () => {
    const [a, b, c] = [lineOf(1, "form"), lineOf(2, "form"), lineOf(3, "form")];
    const [x, y] = [lineOf(8, "form"), lineOf(9, "breath")];
    expect(otherLines([a, b, c], [x, { ...a }, { ...b }, y, { ...c }])).toEqual([
      { how: "added", is: x },
      { how: "added", is: y },
    ]);
    expect(otherLines([a, b, c], [{ ...b }, { ...c }, { ...a }])).toEqual([{ how: "moved", was: a, is: a, after: c }]);
  });
});
