/** The cue card: what it holds, and every way in which a device must refuse one. */
import { generateKeyPairSync, sign } from "node:crypto";
import { describe, expect, test } from "vitest";
import { canonicalJson, contentHash, sha256Hex } from "#lib/canonical/canonical.ts";
import { fromBase64url, toBase64url } from "#lib/card/base64url.ts";
import { buildCard, cardBytes, SAFETY_NOTE, sealCard, shortName, verifyCard } from "#lib/card/card.ts";
import { classClock } from "#lib/clock/clock.ts";
import { cueTrack } from "#lib/cues/cue-track.ts";
import type { Cue } from "#lib/cues/types.ts";
import { floorNow } from "#lib/floor/now.ts";
import { retimedPlan } from "#lib/floor/retimed-plan.ts";
import { samplePlan } from "./sample-plan.ts";

const NOW = Date.UTC(2026, 4, 4, 9);
const DAY = 86_400_000;
const studio = () => {
  const pair = generateKeyPairSync("ed25519");
  const raw = pair.publicKey.export({ format: "jwk" }).x ?? "";
  return { publicKey: raw, sign: (bytes: Uint8Array) => new Uint8Array(sign(null, bytes, pair.privateKey)) };
};
const key = studio();
const card = buildCard({
  studio: { name: "Tholepin Strength", town: "Port Ellery" },
  planId: "rows",
  number: 2,
  room: { id: "harbour", name: "Harbour room" },
  plan: samplePlan(),
  issuedAt: NOW,
  expiresAt: NOW + 30 * DAY,
});
const sealed = sealCard(card, "k1", key.sign);
const reason = (envelope: unknown, now = NOW, publicKey = key.publicKey) => {
  const verdict = verifyCard(envelope, publicKey, now);
  return verdict.ok ? "taken" : verdict.reason;
};

describe("a card that the studio signed with node:crypto", () => {
  test("is accepted by the device after a round trip as JSON", () => {
    const verdict = verifyCard(JSON.parse(JSON.stringify(sealed)), key.publicKey, NOW);
    expect(verdict).toEqual({ ok: true, card });
  });

  test("carries the whole plan under its hash, its clock, its words and its cautions", () => {
    expect(card.edition.hash).toBe(contentHash(samplePlan()));
    expect(card.plan).toEqual(samplePlan());
    expect(card.clock.total).toBe(265);
    expect(card.cautions.note).toEqual([...SAFETY_NOTE]);
    expect(card.cautions.asked.map((a) => [a.words, a.items])).toContainEqual(["wrist load", ["pike-1"]]);
    expect(card.cautions.expected).toEqual(["wrist pain"]);
  });
});

test("a card from before transitions were told is still good, and its changes take no time to tell", () => {
  const rows = card.clock.rows.map(({ transition: { telling: _, ...transition }, ...row }) => ({ ...row, transition }));
  const old = { ...card, clock: { ...card.clock, rows } } as unknown as typeof card;
  const verdict = verifyCard(JSON.parse(JSON.stringify(sealCard(old, "k1", key.sign))), key.publicKey, NOW);
  expect(verdict.ok && verdict.card.clock.rows.map(({ transition }) => transition.telling)).toEqual(rows.map(() => 0));
});

describe("a line with a moment of its own", () => {
  const plan = samplePlan();
  const items = plan.items.map((item) =>
    item.id === "row-left" && item.kind === "move"
      ? { ...item, script: [{ kind: "form" as const, text: "Last fifteen.", at: { leftSeconds: 17 } }] }
      : item,
  );
  const timed = { ...plan, items };
  const { studio, room } = card;
  const made = buildCard({ studio, room, planId: "rows", number: 3, plan: timed, issuedAt: NOW, expiresAt: NOW + DAY });
  const momentOf = (shown: readonly Cue[]) => shown.find(({ text }) => text === "Last fifteen.")?.from;

  test("is carried by the card and called by the floor when the page says so", () => {
    expect(made.plan).toEqual(timed);
    const end = made.clock.rows.find(({ item }) => item === "row-left")?.end ?? Number.NaN;
    expect([made.cues, floorNow(made, []).cues, cueTrack(timed).cues].map(momentOf)).toEqual(Array(3).fill(end - 17));
  });

  test("moves with its item when the floor gives it other seconds", () => {
    const shorter = retimedPlan(made.plan, {
      changed: [{ item: "row-left", to: 30 }],
      dropped: [],
      closingSeconds: 40,
    });
    const end = classClock(shorter).rows.find(({ item }) => item === "row-left")?.end ?? Number.NaN;
    expect(momentOf(cueTrack(shorter).cues)).toBe(end - 17);
  });
});

describe("a device refuses", () => {
  test("a card with any one byte of it altered", () => {
    const text = canonicalJson(card);
    for (let at = 0; at < text.length; at += 97) {
      const other = text[at] === "7" ? "8" : "7";
      const altered = text.slice(0, at) + other + text.slice(at + 1);
      let value: unknown;
      try {
        value = JSON.parse(altered);
      } catch {
        continue; // no longer JSON, so never read as a card
      }
      expect(reason({ ...sealed, card: value })).toMatch(/changed after it was signed/);
    }
  });

  test("an altered card whose digest was made to match", () => {
    const forged = { ...card, plan: { ...card.plan, title: "Another" } };
    expect(reason({ ...sealed, card: forged, sha256: sha256Hex(canonicalJson(forged)) })).toMatch(
      /not signed with the key/,
    );
  });

  test("another studio's key, a broken key, a broken signature", () => {
    expect(reason(sealed, NOW, studio().publicKey)).toMatch(/not signed with the key/);
    expect(reason(sealed, NOW, "short")).toMatch(/not signed with the key/);
    expect(reason({ ...sealed, signature: `${sealed.signature.slice(0, -4)}AAAA` })).toMatch(/not signed with the key/);
    expect(reason({ ...sealed, signature: "?" })).toMatch(/not signed with the key/);
  });

  test("an expired card, from the first moment on", () => {
    expect(reason(sealed, NOW + 30 * DAY - 1)).toBe("taken");
    expect(reason(sealed, NOW + 30 * DAY)).toBe(
      "This edition was good until 2026-06-03. Ask a lead to sign the plan off again, then fetch it.",
    );
  });

  test("a signed plan that is not the edition it names", () => {
    const wrong = sealCard({ ...card, plan: { ...card.plan, title: "Another" } }, "k1", key.sign);
    expect(reason(wrong)).toMatch(/not the edition that it names/);
  });

  test("something signed in another format, and something that is not a card", () => {
    const other = { ...card, format: "springline.card/2" };
    const bytes = cardBytes(other);
    const envelope = {
      card: other,
      sha256: sha256Hex(canonicalJson(other)),
      keyId: "k1",
      signature: toBase64url(key.sign(bytes)),
    };
    for (const bad of [envelope, null, 3, {}, { ...sealed, card: undefined }])
      expect(reason(bad)).toMatch(/not a cue card/);
  });
});

describe("short name", () => {
  // D. S. Wilkerson, arXiv:0901.4016 (2009): examples of the paper, IPv4 addresses as 32 bits.
  test.each([
    ["7f000001", "lusab-babad"],
    ["3f54dcc1", "gutih-tugad"],
    ["3f760723", "gutuk-bisog"],
    ["8c62c18d", "mudof-sakat"],
    ["40ff06c8", "haguz-biram"],
  ])("%s is %s", (hex, name) => expect(shortName(hex)).toBe(name));

  test("refuses anything but a hash", () => expect(() => shortName("xyz")).toThrow(RangeError));
});

test("base64url agrees with Node's own", () => {
  for (let n = 0; n < 70; n += 1) {
    const bytes = Uint8Array.from({ length: n }, (_, i) => (i * 89 + n * 31) & 255);
    const text = toBase64url(bytes);
    expect(text).toBe(Buffer.from(bytes).toString("base64url"));
    expect(fromBase64url(text)).toEqual(bytes);
  }
  expect(fromBase64url("a")).toBeNull();
  expect(fromBase64url("a+b/")).toBeNull();
});
