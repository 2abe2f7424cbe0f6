/** What the form of a move keeps in its tab: the words, and which faults were shown beside them. */
import { afterEach, expect, test, vi } from "vitest";
import { draftKey, dropDraft, keepDraft, readKept } from "#app/_parts/kept/kept-draft.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { moveDraft, readMoveDraft } from "#lib/library/draft.ts";
import { MOVES } from "#tests/support/plan-studio.ts";

const store = new Map<string, string>();
vi.stubGlobal("sessionStorage", {
  getItem: (key: string) => store.get(key) ?? null,
  setItem: (key: string, text: string) => store.set(key, text),
  removeItem: (key: string) => store.delete(key),
});
afterEach(() => store.clear());

test("a refused draft comes back with what was typed and the faults that were shown; one of before without", () => {
  const key = draftKey("ines", "kneeling-row");
  const typed = moveDraft(MOVES.row, STANDARD_FORMATS);
  const draft = { ...typed, figure: { ...typed.figure, end: { ...typed.figure.end, bendDeg: "900" } } };
  expect(readMoveDraft(draft, null)).toMatchObject({ ok: false, faults: [{ place: "figure.end.bendDeg" }] });
  keepDraft(key, { draft, base: null, shown: ["*"] });
  expect(readKept(key)).toEqual({ draft, base: null, shown: ["*"] });
  store.set(key, JSON.stringify({ draft, base: null }));
  expect(readKept(key)).toEqual({ draft, base: null, shown: [] });
  dropDraft(key);
  expect(readKept(key)).toBeNull();
});
