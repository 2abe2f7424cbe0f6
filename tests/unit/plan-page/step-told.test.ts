/** What a page says of steps that others take while it is open, and of what its own person is about to do. */

import { describe, expect, it } from "vitest";
import { readersNow } from "#app/_margin/readers-now.ts";
import { unreadWords } from "#app/_margin/sign-off-words.ts";
import { stepRefusedWords } from "#app/_margin/step-refused.ts";
import { stepTold } from "#app/_margin/step-words.ts";
import { ToldLines } from "#app/_session/typed/told-lines.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import type { RoundEnded, RoundNews, StateNews } from "#lib/protocol/messages.ts";
import { faultsOfSentence } from "#tests/support/plain-english.ts";

const round = (number: number, more: Partial<RoundNews> = {}): RoundNews => ({
  ...{ number, reader: null, since: null, mainPoints: [], ended: null, before: null },
  ...more,
});
const news = (state: StateNews["state"], more: Partial<StateNews> = {}): StateNews => ({
  ...{ state, edition: 1, editionHash: null, handedInBy: null, note: null, round: round(2) },
  ...more,
});
const ended = (outcome: RoundEnded["outcome"], byId = "jonas"): RoundEnded => ({
  ...{ outcome, byId, byName: byId === "jonas" ? "Jonas Okafor" : "Ines Duarte", at: 7 },
});
const told = (before: StateNews, now: StateNews, me = "ines", hasNote = false) =>
  stepTold(before, now, { id: me, hasNote }, (at) => `day ${at}`);

describe("a step that somebody else takes", () => {
  it("a taking back: who, when, and that a note is kept", () => {
    const now = news("in-writing", { round: round(2, { ended: ended("taken-back") }) });
    expect(told(news("handed-in"), now, "ines", true)?.sentence).toBe(
      "Jonas Okafor took the plan back on day 7. Your note is kept for the next round.",
    );
    expect(told(news("handed-in"), now)?.sentence).toBe("Jonas Okafor took the plan back on day 7.");
    expect(told(news("handed-in"), now, "jonas")).toBeNull();
  });

  it("a return: with the main points, and where the note is", () => {
    const now = news("handed-back", {
      note: "Slower",
      round: round(2, { mainPoints: ["One voice"], ended: ended("returned", "ines") }),
    });
    expect(told(news("handed-in"), now, "jonas")).toMatchObject({
      sentence: "Ines Duarte returned the plan with notes on day 7. The notes stand over the class.",
      points: ["One voice"],
    });
  });

  it("a taking back and an offer that the page hears of at once", () => {
    const now = news("handed-in", { round: round(3, { before: ended("taken-back") }) });
    expect(told(news("handed-in"), now)?.sentence).toBe(
      "Jonas Okafor took the plan back on day 7. It is offered again, as round 3.",
    );
  });

  it("nothing where nothing happened to the round", () => {
    const read = news("handed-in", { round: round(2, { reader: { id: "ines", name: "Ines" }, since: 1 }) });
    expect(told(news("handed-in"), read)).toBeNull();
    expect(told(news("in-writing"), news("handed-in"))).toBeNull();
  });

  it("writing in a signed plan, once, whoever says it first", () => {
    const line = told(news("signed-off"), news("in-writing"));
    expect(line?.sentence).toContain("Edition 1 stays signed");
    const lines = new ToldLines();
    expect(line && [lines.tell(line), lines.tell(line)]).toEqual([true, false]);
    if (line) lines.close(line.id);
    expect(lines.get()).toEqual([]);
  });

  it("is said in plain English", () => {
    for (const outcome of ["taken-back", "returned", "signed"] as const) {
      const state = ({ "taken-back": "in-writing", returned: "handed-back", signed: "signed-off" } as const)[outcome];
      const line = told(news("handed-in"), news(state, { round: round(2, { ended: ended(outcome) }) }), "ines", true);
      expect(faultsOfSentence(line?.sentence ?? "")).toEqual([]);
    }
  });
});

describe("a step that is refused", () => {
  it("says when, where the server does", () => {
    const at = Date.UTC(2026, 10, 30, 7, 41);
    expect(stepRefusedWords({ message: "Jonas took it back.", details: { endedAt: at } }, STANDARD_FORMATS)).toBe(
      "Jonas took it back. (That was on 30 November, 07:41.)",
    );
    expect(stepRefusedWords({ message: "No.", details: { endedAt: null } }, STANDARD_FORMATS)).toBe("No.");
    expect(stepRefusedWords({ message: "No." }, STANDARD_FORMATS)).toBe("No.");
  });
});

describe("before a step of one's own", () => {
  it("whoever reads the plan is named: the lead who took it up, then who has it open", () => {
    const present = [
      { userId: "jonas", name: "Jonas", writes: true },
      { userId: "ines", name: "Ines", writes: false },
      { userId: "petra", name: "Petra", writes: false },
      { userId: "marta", name: "Marta", writes: true },
    ];
    const state = news("handed-in", { round: round(1, { reader: { id: "ines", name: "Ines" }, since: 5 }) });
    expect(readersNow({ state, present }, "jonas")).toEqual([
      { name: "Ines", since: 5 },
      { name: "Petra", since: null },
    ]);
    expect(readersNow({ state: news("handed-in"), present: present.slice(0, 1) }, "jonas")).toEqual([]);
  });

  it("a sign-off says how many changed plates are unread, and nothing when all are read", () => {
    expect([unreadWords(2, 5), unreadWords(1, 5), unreadWords(1, 1), unreadWords(0, 5), unreadWords(0, 0)]).toEqual([
      "2 of 5 changed plates are not marked as read.",
      "1 of 5 changed plates is not marked as read.",
      "The one changed plate is not marked as read.",
      null,
      null,
    ]);
  });
});
