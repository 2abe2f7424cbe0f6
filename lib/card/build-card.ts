/** Makes the cue card of an edition and puts it in a signed envelope; the caller supplies the signer. */
import { canonicalJson, contentHash, sha256Hex } from "#lib/canonical/canonical.ts";
import { classClock } from "#lib/clock/clock.ts";
import { cueTrack } from "#lib/cues/cue-track.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { toBase64url } from "./base64url.ts";
import { cardBytes } from "./card-bytes.ts";
import { cardCautions } from "./cautions.ts";
import { CARD_FORMAT, type Card, type CardEnvelope, cardSchema } from "./schema.ts";
import { shortName } from "./short-name.ts";

export interface CardInput {
  readonly studio: { readonly name: string; readonly town: string };
  readonly planId: string;
  /** Number of the edition: 1, 2, ... */
  readonly number: number;
  readonly room: { readonly id: string; readonly name: string };
  readonly plan: Plan;
  /** ms since the epoch, UTC. */
  readonly issuedAt: number;
  readonly expiresAt: number;
}

/** The card of a signed plan. Pure: the same input gives the same bytes. */
export function buildCard(input: CardInput): Card {
  const { plan } = input;
  const hash = contentHash(plan);
  const track = cueTrack(plan);
  const card = {
    format: CARD_FORMAT,
    studio: { name: input.studio.name, town: input.studio.town },
    edition: { planId: input.planId, number: input.number, hash, shortName: shortName(hash), title: plan.title },
    room: { id: input.room.id, name: input.room.name },
    plan,
    clock: classClock(plan),
    cues: track.cues,
    dropped: track.dropped,
    cautions: cardCautions(plan),
    issuedAt: new Date(input.issuedAt).toISOString(),
    expiresAt: new Date(input.expiresAt).toISOString(),
  };
  return cardSchema.parse(card);
}

/** Seals a card. `sign` returns the 64 bytes of the Ed25519 signature over the given bytes. */
export function sealCard(card: Card, keyId: string, sign: (bytes: Uint8Array) => Uint8Array): CardEnvelope {
  return { card, sha256: sha256Hex(canonicalJson(card)), keyId, signature: toBase64url(sign(cardBytes(card))) };
}
