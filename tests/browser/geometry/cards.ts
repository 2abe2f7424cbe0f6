/** The demo's classes as signed cards, made and signed in the test page. */
import { getPublicKey, hashes, sign } from "@noble/ed25519";
import { sha512 } from "@noble/hashes/sha2.js";
import { toBase64url } from "#lib/card/base64url.ts";
import { buildCard, type CardEnvelope, sealCard } from "#lib/card/card.ts";
import { FIRST_TRY } from "#seed/plans/first-try.ts";
import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";
import { WHOLE_BODY } from "#seed/plans/whole-body.ts";

hashes.sha512 = sha512;

export interface StagedClass {
  readonly envelope: CardEnvelope;
  readonly publicKey: string;
}

const SECRET = new Uint8Array(32).fill(7);
const publicKey = toBase64url(getPublicKey(SECRET));

export const CARDS: readonly StagedClass[] = [WHOLE_BODY, UPPER_BODY_AND_TRUNK, FIRST_TRY].map((plan, n) => {
  const card = buildCard({
    studio: { name: "Tholepin Strength", town: "Port Ellery" },
    planId: `class-${n}`,
    number: 1,
    room: { id: "loft", name: "Loft" },
    plan,
    issuedAt: Date.UTC(2026, 0, 1),
    expiresAt: Date.UTC(2026, 11, 31),
  });
  return { publicKey, envelope: sealCard(card, "stage", (bytes) => sign(bytes, SECRET)) };
});
