/** The class that another screen leads, at this moment: drawn again whenever what is shown changes. */
import { useEffect, useMemo, useRef, useState } from "react";
import type { Card, CardEnvelope } from "#lib/card/schema.ts";
import { verifyCard } from "#lib/card/verify-card.ts";
import type { LineLink } from "#lib/client/line-link.ts";
import { type FloorNow, floorNow, floorView, positionAt } from "#lib/floor/now.ts";
import type { FloorView } from "#lib/floor/view.ts";
import type { LineClass } from "#lib/line/messages.ts";
import { REDRAW_CHECK_MS, shownAt } from "../_parts/redraw.ts";
import type { ShelfState } from "../_parts/use-shelf.ts";

export interface Followed {
  readonly view: FloorView;
  readonly now: FloorNow;
  /** Seconds of the class that are behind us. */
  readonly position: number;
}

export function useFollowed(card: Card, link: LineLink, { log }: LineClass): Followed {
  const [at, setAt] = useState(() => link.classTime());
  const shown = useRef("");
  useEffect(() => {
    const look = () => {
      const now = link.classTime();
      const is = shownAt(card, log, now);
      if (is === shown.current) return;
      shown.current = is;
      setAt(now);
    };
    look();
    const tick = setInterval(look, REDRAW_CHECK_MS);
    document.addEventListener("visibilitychange", look);
    return () => {
      clearInterval(tick);
      document.removeEventListener("visibilitychange", look);
    };
  }, [card, link, log]);
  return { view: floorView(card, log, at), now: floorNow(card, log), position: positionAt(card, log, at).position };
}

interface FollowedCard {
  readonly card: Card;
  readonly envelope: CardEnvelope;
}

/** The signed card of the class that is led, from this device; fetched once if it is not there. */
export function useFollowedCard(shelf: ShelfState, publicKey: string, cls: LineClass | null): FollowedCard | null {
  const { cards } = shelf.shelf;
  const { planId, hash } = cls?.edition ?? { planId: "", hash: "" };
  const found = useMemo(() => {
    const kept = cards.find((one) => one.planId === planId && one.envelope.card.edition.hash === hash);
    // The leader started while the card was valid: the class may end after its last day.
    const verdict = kept && verifyCard(kept.envelope, publicKey, Date.parse(kept.envelope.card.issuedAt));
    return kept && verdict?.ok ? { card: verdict.card, envelope: kept.envelope } : null;
  }, [cards, planId, hash, publicKey]);
  const fetched = useRef("");
  const { refresh } = shelf;
  useEffect(() => {
    if (!hash || found || fetched.current === hash) return;
    fetched.current = hash;
    refresh().catch(() => undefined); // no storage: the shelf says so
  }, [hash, found, refresh]);
  return found;
}
