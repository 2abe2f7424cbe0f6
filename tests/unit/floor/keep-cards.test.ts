/** The cards of a device: good ones replace older ones, bad ones never replace anything, and each refusal has a reason. */
import { generateKeyPairSync, sign } from "node:crypto";
import { describe, expect, test } from "vitest";
import { buildCard, type CardEnvelope, sealCard } from "#lib/card/card.ts";
import { type KeptCard, keepCards } from "#lib/floor/keep-cards.ts";
import { latenessWords, minutesSeconds, secondsFigure, unitWords } from "#lib/floor/time-words.ts";
import { samplePlan } from "../card/sample-plan.ts";

const NOW = Date.UTC(2026, 4, 4);
const pair = generateKeyPairSync("ed25519");
const trust = { publicKey: pair.publicKey.export({ format: "jwk" }).x ?? "", now: NOW };

function envelope(planId: string, number: number, expiresAt = NOW + 1000): CardEnvelope {
  const card = buildCard({
    studio: { name: "Tholepin Strength", town: "Port Ellery" },
    planId,
    number,
    room: { id: "harbour", name: "Harbour room" },
    plan: { ...samplePlan(), title: `${planId} ${number}` },
    issuedAt: NOW - 1000,
    expiresAt,
  });
  return sealCard(card, "k", (bytes) => new Uint8Array(sign(null, bytes, pair.privateKey)));
}
const kept = (made: CardEnvelope): KeptCard => ({
  planId: made.card.edition.planId,
  envelope: made,
  keptAt: NOW - 500,
});
const titles = (cards: readonly KeptCard[]) => cards.map((card) => card.envelope.card.edition.title);
const forged = (made: CardEnvelope): CardEnvelope => ({
  ...made,
  card: { ...made.card, room: { id: "loft", name: "Loft" } },
});

describe("when cards arrive", () => {
  test("keeps new ones, replaces older editions, drops plans that are no longer sent", () => {
    const before = [kept(envelope("rows", 1)), kept(envelope("gone", 1))];
    const after = keepCards(before, [envelope("rows", 2), envelope("reaches", 1)], trust);
    expect(titles(after.kept)).toEqual(["rows 2", "reaches 1"]);
    expect(after.refused).toEqual([]);
  });

  test("[INV-14] keeps the last good card when a new edition is forged, and says so", () => {
    const after = keepCards([kept(envelope("rows", 1))], [forged(envelope("rows", 2))], trust);
    expect(titles(after.kept)).toEqual(["rows 1"]);
    expect(after.refused).toMatchObject([{ title: "rows 2", earlierKept: true }]);
    expect(after.refused[0]?.reason).toMatch(/changed after it was signed/);
  });

  test("a withdrawn card stays while a class may still run from it, then only what says which it was", () => {
    const before = [kept(envelope("rows", 1)), kept(envelope("reaches", 1))];
    const out = { planId: "rows", number: 1, byName: "Ines", at: NOW, reason: "The firm spring is worn." };
    const hours = (count: number) => ({ ...trust, now: NOW + count * 3_600_000 });
    const late = envelope("reaches", 1, NOW + 100 * 3_600_000);
    const soon = keepCards(before, [late], hours(4), [out]);
    expect(titles(soon.kept)).toEqual(["reaches 1", "rows 1"]);
    expect(soon.dropped).toEqual([]);
    const later = keepCards(soon.kept, [late], hours(13), [out], soon.dropped);
    expect(titles(later.kept)).toEqual(["reaches 1"]);
    expect(later.dropped).toEqual([{ planId: "rows", number: 1, title: "rows 1" }]);
    const again = keepCards(later.kept, [late], hours(14), [out], later.dropped);
    expect(again.dropped).toEqual(later.dropped);
    const signedAgain = envelope("rows", 2, NOW + 100 * 3_600_000);
    expect(keepCards(again.kept, [late, signedAgain], hours(15), [out], again.dropped)).toMatchObject({ dropped: [] });
    expect(keepCards(again.kept, [late], hours(15), [], again.dropped)).toMatchObject({ dropped: [] });
  });

  test("does not keep a forged card of an unknown plan", () => {
    const after = keepCards([], [forged(envelope("rows", 1)), "nonsense", null], trust);
    expect(after.kept).toEqual([]);
    expect(after.refused.map((r) => [r.title, r.earlierKept])).toEqual([
      ["rows 1", false],
      ["A card", false],
      ["A card", false],
    ]);
  });

  test("refuses an older edition and an expired one", () => {
    const after = keepCards([kept(envelope("rows", 2))], [envelope("rows", 1), envelope("late", 1, NOW)], trust);
    expect(titles(after.kept)).toEqual(["rows 2"]);
    expect(after.refused.map((r) => r.reason)).toEqual([
      "It is an older edition than the one on this device.",
      "This edition was good until 2026-05-04. Ask a lead to sign the plan off again, then fetch it.",
    ]);
  });
});

describe("whatever is wrong with a new card, the last good one stays", () => {
  const before = [kept(envelope("rows", 1))];
  const stays = (bad: unknown) => {
    const after = keepCards(before, [bad], trust);
    expect(titles(after.kept)).toEqual(["rows 1"]);
    expect(after.refused).toHaveLength(1);
    return after.refused[0]?.reason ?? "";
  };

  test("any one byte of it altered, also in the id of its plan", () => {
    const text = JSON.stringify(envelope("rows", 2));
    const places = Array.from({ length: 40 }, (_, n) => Math.floor(((n + 0.5) * text.length) / 40));
    places.push(text.indexOf('"planId":"rows"') + 11);
    for (const place of places) {
      const altered = `${text.slice(0, place)}${text[place] === "a" ? "b" : "a"}${text.slice(place + 1)}`;
      let card: unknown = altered;
      try {
        card = JSON.parse(altered);
      } catch {
        // No longer JSON: passed on as a string.
      }
      // Only the name of the key is outside the signature, and it proves nothing.
      if (/"keyId":"[^k]"/.test(altered)) continue;
      expect(stays(card)).toMatch(/changed after it was signed|not signed with the key of this studio|not a cue card/);
    }
  });

  test("signed by another studio's key", () => {
    const other = generateKeyPairSync("ed25519");
    const { card } = envelope("rows", 2);
    const foreign = sealCard(card, "k", (bytes) => new Uint8Array(sign(null, bytes, other.privateKey)));
    expect(stays(foreign)).toMatch(/not signed with the key of this studio/);
  });

  test("expired", () => expect(stays(envelope("rows", 2, NOW))).toMatch(/was good until 2026-05-04/));

  test("a bad card that claims another plan neither duplicates nor replaces it", () => {
    const both = [...before, kept(envelope("reaches", 1))];
    const after = keepCards(both, [forged(envelope("rows", 2)), envelope("rows", 2), envelope("reaches", 2)], trust);
    expect(titles(after.kept)).toEqual(["rows 2", "reaches 2"]);
  });
});

describe("times on the floor", () => {
  test.each([
    [0, "0:00"],
    [59.2, "1:00"],
    [60, "1:00"],
    [1151.01, "19:12"],
    [-4, "0:00"],
  ])("%d s is %s", (seconds, words) => expect(minutesSeconds(seconds)).toBe(words));

  test("seconds are counted up to 99, then minutes and seconds", () => {
    expect([9, 99, 100, 145].map(secondsFigure)).toEqual(["9", "99", "1:40", "2:25"]);
    const unit = (phase: "work" | "change" | "pause", secondsLeft: number) => unitWords({ phase, secondsLeft });
    expect([unit("work", 99), unit("change", 9), unit("pause", 20)]).toEqual([
      ...["seconds", "seconds left to change", "seconds of pause"],
    ]);
    expect([unit("work", 100), unit("change", 100), unit("pause", 145)]).toEqual([
      "left",
      "left to change",
      "of pause",
    ]);
  });

  test("late and early in words; a moment either way is on time", () => {
    expect([0, 2.9, -2.9, 3, 80.9, -10].map(latenessWords)).toEqual([
      "on time",
      "on time",
      "on time",
      "0:03 late",
      "1:20 late",
      "0:10 early",
    ]);
  });
});
