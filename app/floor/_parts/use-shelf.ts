/** The device's pairing and its shelf of cards: read at the start, refreshed on demand, kept at every change. */
import { useCallback, useEffect, useState } from "react";
import { keepCards, type Refused } from "#lib/floor/keep-cards.ts";
import { keep, kept, letGo, type Pairing, type Shelf } from "./kept.ts";
import { fetchCards } from "./studio-calls.ts";

export interface ShelfState {
  /** Undefined while the device's storage is read, null when it is not paired. */
  readonly pairing: Pairing | null | undefined;
  readonly shelf: Shelf;
  readonly refreshing: boolean;
  readonly refused: readonly Refused[];
  /** Sentences about the last refresh: no network, pairing taken back, a wrong clock. */
  readonly notices: readonly string[];
  refresh(): Promise<void>;
  paired(pairing: Pairing): Promise<void>;
  /** Lets go of everything: the device starts anew. */
  forget(): Promise<void>;
}

const EMPTY: Shelf = { cards: [], nextSlots: {}, refreshedAt: 0 };
/** A device's clock this far from the studio's is worth a word: a card's last day is read by it. */
const CLOCK_OFF_MS = 5 * 60_000;
const NO_STORAGE =
  "This browser gives the page no storage, so nothing can be kept. Leave private browsing, or use another.";

export function useShelf(): ShelfState {
  const [pairing, setPairing] = useState<Pairing | null | undefined>(undefined);
  const [shelf, setShelf] = useState<Shelf>(EMPTY);
  const [refreshing, setRefreshing] = useState(false);
  const [refused, setRefused] = useState<readonly Refused[]>([]);
  const [notices, setNotices] = useState<readonly string[]>([]);

  const refreshAs = useCallback(async (as: Pairing) => {
    setRefreshing(true);
    const result = await refreshed(as);
    if (result.shelf) setShelf(result.shelf);
    setRefused(result.refused);
    setNotices(result.notices);
    setRefreshing(false);
  }, []);

  useEffect(() => {
    let here = true;
    (async () => {
      const [was, cards] = await Promise.all([kept("pairing"), kept("shelf")]);
      if (!here) return;
      setShelf(cards ?? EMPTY);
      setPairing(was ?? null);
      if (was) await refreshAs(was);
    })().catch(() => {
      setPairing(null);
      setNotices([NO_STORAGE]);
    });
    return () => {
      here = false;
    };
  }, [refreshAs]);

  return {
    pairing,
    shelf,
    refreshing,
    refused,
    notices,
    refresh: async () => {
      if (pairing && !refreshing) await refreshAs(pairing);
    },
    paired: async (made) => {
      await keep("pairing", made);
      setPairing(made);
      await refreshAs(made);
    },
    forget: async () => {
      await Promise.all([letGo("pairing"), letGo("shelf"), letGo("running"), letGo("rehearsing")]);
      setShelf(EMPTY);
      setRefused([]);
      setNotices([]);
      setPairing(null);
    },
  };
}

interface Refreshed {
  readonly shelf: Shelf | null;
  readonly refused: readonly Refused[];
  readonly notices: readonly string[];
}

async function refreshed(pairing: Pairing): Promise<Refreshed> {
  const answer = await fetchCards(pairing.token);
  if (!answer.ok) return { shelf: null, refused: [], notices: [answer.message] };
  const now = Date.now();
  const before = (await kept("shelf")) ?? EMPTY;
  const { cards, nextSlots, withdrawn } = answer.value;
  const after = keepCards(before.cards, cards, { publicKey: pairing.publicKey, now }, withdrawn);
  const shelf = { cards: after.kept, nextSlots, withdrawn, refreshedAt: now };
  await keep("shelf", shelf);
  const off = now - answer.value.serverTime;
  const minutes = Math.round(Math.abs(off) / 60_000);
  const clock = `This device's clock is ${minutes} minutes ${off > 0 ? "ahead of" : "behind"} the studio's: set it right.`;
  return { shelf, refused: after.refused, notices: Math.abs(off) > CLOCK_OFF_MS ? [clock] : [] };
}
