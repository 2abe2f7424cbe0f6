/** What of a card is signed. Apart from the making of cards, which a device does not need. */
import { canonicalJson } from "#lib/canonical/canonical.ts";

/** The bytes that are signed: the card's canonical JSON in UTF-8. */
export const cardBytes = (card: unknown): Uint8Array => new TextEncoder().encode(canonicalJson(card));
