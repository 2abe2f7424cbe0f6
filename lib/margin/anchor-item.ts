/** The item in whose plate a thread stands. */
import type { Anchor } from "#lib/protocol/messages.ts";

/** Null for a thread on the class as a whole. */
export function itemOfAnchor(anchor: Anchor): string | null {
  if (anchor.kind === "plan") return null;
  return anchor.kind === "finding" ? (anchor.itemIds[0] ?? null) : anchor.itemId;
}
