/** The part of a card that is signed. A file of its own, since a device verifies cards but does not build them. */
import { canonicalJson } from "#lib/canonical/canonical.ts";

/** The bytes that are signed: the card's canonical JSON in UTF-8. */
export const cardBytes = (card: unknown): Uint8Array => new TextEncoder().encode(canonicalJson(card));
