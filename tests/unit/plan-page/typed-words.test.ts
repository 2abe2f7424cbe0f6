/** Words that are typed and not sent outlive their field, in this tab, until they are sent or discarded. */
import { describe, expect, it, vi } from "vitest";
import { withHeld } from "#app/_margin/held-slips.ts";
import { PLACE, type TypedPlace, TypedWords, withoutPlace } from "#app/_session/typed/typed-words.ts";
import type { Finding } from "#lib/rules/define/types.ts";

function tab(): Pick<Storage, "getItem" | "setItem" | "removeItem"> & { readonly held: Map<string, string> } {
  const held = new Map<string, string>();
  return {
    held,
    getItem: (key) => held.get(key) ?? null,
    setItem: (key, value) => void held.set(key, value),
    removeItem: (key) => void held.delete(key),
  };
}
const REPLY: TypedPlace = { place: PLACE.reply("t1"), label: "Reply to Ines", items: ["m1"] };
const finding = (key: string, items = ["m1"]): Finding => ({
  ...{ key, rule: "rushed-change", level: "look", items, message: `${key} is short.`, values: {} },
});

describe("typed words", () => {
  it("stay when their field leaves the page and when the page is loaded again, until they are sent", () => {
    const store = tab();
    const words = new TypedWords("key", store);
    const leave = words.enter(REPLY);
    words.keep(REPLY, "Not so fast");
    leave();
    expect(words.wordsAt(REPLY.place)).toBe("Not so fast");
    const again = new TypedWords("key", store);
    expect(again.list()).toEqual([{ ...REPLY, words: "Not so fast" }]);
    again.drop(REPLY.place);
    expect(again.list()).toEqual([]);
    expect(store.held.size).toBe(0);
  });

  it("leave nothing behind where nothing was typed, but an open field is known while it is open", () => {
    const store = tab();
    const words = new TypedWords("key", store);
    const heard = vi.fn();
    words.subscribe(heard);
    const leave = words.enter(REPLY);
    expect(words.at(REPLY.place)?.words).toBe("");
    words.keep(REPLY, "  ");
    expect(store.held.size).toBe(0);
    leave();
    expect(words.at(REPLY.place)).toBeUndefined();
    expect(heard).toHaveBeenCalled();
  });

  it("know the round in which they were begun, and begin anew once they were sent", () => {
    const words = new TypedWords("key", null);
    const note = (round: number) => ({ place: PLACE.returning, label: "Note", items: [], round });
    words.keep(note(2), "Slow");
    words.keep(note(3), "Slower");
    expect(words.at(PLACE.returning)?.round).toBe(2);
    words.drop(PLACE.returning);
    words.keep(note(3), "New");
    expect(words.at(PLACE.returning)?.round).toBe(3);
  });

  it("are kept for the page alone where the tab's store is full, forbidden or damaged", () => {
    const full = {
      ...tab(),
      setItem: () => {
        throw new Error("full");
      },
      getItem: () => "{",
    };
    const words = new TypedWords("key", full);
    words.keep(REPLY, "Here");
    expect(words.wordsAt(REPLY.place)).toBe("Here");
  });

  it("are without a place once all that they are about is gone, and have it again when it is back", () => {
    const words = new TypedWords("key", null);
    words.keep(REPLY, "About m1");
    words.keep({ place: PLACE.plan, label: "Comment on the plan", items: [] }, "About all");
    words.keep({ place: PLACE.finding("k"), label: "Finding", items: ["m1", "m2"] }, "About both");
    const lost = (...ids: string[]) =>
      withoutPlace(
        words.list(),
        ids.map((id) => ({ id })),
      ).map(({ words: w }) => w);
    expect(lost("m1", "m2")).toEqual([]);
    expect(lost("m2")).toEqual(["About m1"]);
    expect(lost()).toEqual(["About m1", "About both"]);
  });
});

describe("a finding that somebody writes about", () => {
  const [a, b, c] = ["a", "b", "c"].map((key) => finding(key)) as [Finding, Finding, Finding];
  const typedOn = (of: Finding) => [
    { place: PLACE.finding(of.key ?? ""), label: "", items: of.items, finding: of, words: "" },
  ];
  it("stays in its place among the others when it is not found any more", () => {
    const held = withHeld([a, b, c], [a, c], typedOn(b));
    expect(held.findings).toEqual([a, b, c]);
    expect([...held.gone]).toEqual([b]);
    expect(withHeld(held.findings, [c], typedOn(b)).findings).toEqual([b, c]);
  });
  it("goes when nobody writes about it, and is itself again when it is found again", () => {
    expect(withHeld([a, b, c], [a, c], []).findings).toEqual([a, c]);
    const back = { ...b, message: "b is shorter." };
    const held = withHeld([a, b, c], [a, back, c], typedOn(b));
    expect(held.findings).toEqual([a, back, c]);
    expect(held.gone.size).toBe(0);
  });
  it("is shown after the page was loaded again, though nothing stood before", () => {
    expect(withHeld([], [a], typedOn(b)).findings).toEqual([a, b]);
  });
});
