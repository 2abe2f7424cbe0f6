/** The device's pairing and its cards: read at the start, refreshed on demand, kept on the device at every change. */
import { useCallback, useEffect, useState } from "react";
import { keepCards, type Refused } from "#lib/floor/keep-cards.ts";
import { NO_STORAGE, wrongClockWords } from "./floor-words.ts";
import { keep, kept, letGo, type Pairing, type Shelf } from "./kept.ts";
import { fetchCards } from "./studio-calls.ts";

export interface ShelfState {
  /** Undefined while the device's storage is read, null when it is not paired. */
  readonly pairing: Pairing | null | undefined;
  readonly shelf: Shelf;
  readonly refreshing: boolean;
  readonly refused: readonly Refused[];
  /** Sentences about the last refresh: no network, the pairing withdrawn, a wrong clock. */
  readonly notices: readonly string[];
  refresh(): Promise<void>;
  paired(pairing: Pairing): Promise<void>;
  /** Removes pairing and cards: the device has to be paired again. */
  forget(): Promise<void>;
}

const EMPTY: Shelf = { cards: [], nextSlots: {}, refreshedAt: 0 };
/** From here on a wrong clock of the device is said: the last day of a card is read by it. */
const CLOCK_OFF_MS = 5 * 60_000;
type Shown = Pick<ShelfState, "shelf" | "refused" | "notices">;
const NOTHING: Shown = { shelf: EMPTY, refused: [], notices: [] };

export function useShelf(): ShelfState {
  const [pairing, setPairing] = useState<Pairing | null | undefined>(undefined);
  const { shown, show, refreshing, refreshAs } = useFetchedShelf();
  useEffect(() => {
    let here = true;
    const read = async () => {
      const [was, cards] = await Promise.all([kept("pairing"), kept("shelf")]);
      if (!here) return;
      show({ ...NOTHING, shelf: cards ?? EMPTY });
      setPairing(was ?? null);
      if (was) await refreshAs(was);
    };
    read().catch(() => {
      setPairing(null);
      show((was) => ({ ...was, notices: [NO_STORAGE] }));
    });
    return () => {
      here = false;
    };
  }, [show, refreshAs]);

  return {
    ...shown,
    pairing,
    refreshing,
    refresh: async () => {
      if (pairing && !refreshing) await refreshAs(pairing);
    },
    paired: async (made) => {
      await keep("pairing", made);
      setPairing(made);
      await refreshAs(made);
    },
    forget: async () => {
      await letGoOfAll();
      show(NOTHING);
      setPairing(null);
    },
  };
}

const letGoOfAll = () => Promise.all([letGo("pairing"), letGo("shelf"), letGo("running"), letGo("rehearsing")]);

/** What the shelf shows, and its refreshing: a refresh that failed leaves the cards as they are. */
function useFetchedShelf() {
  const [shown, show] = useState<Shown>(NOTHING);
  const [refreshing, setRefreshing] = useState(false);
  const refreshAs = useCallback(async (as: Pairing) => {
    setRefreshing(true);
    const { shelf, refused, notices } = await refreshed(as);
    show((was) => ({ shelf: shelf ?? was.shelf, refused, notices }));
    setRefreshing(false);
  }, []);
  return { shown, show, refreshing, refreshAs };
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
  const { cards, nextSlots, slotMarks, withdrawn, formats } = answer.value;
  const trust = { publicKey: pairing.publicKey, now };
  const after = keepCards(before.cards, cards, trust, withdrawn, before.dropped);
  const shelf = {
    cards: after.kept,
    dropped: after.dropped,
    nextSlots,
    slotMarks,
    withdrawn,
    formats,
    refreshedAt: now,
  };
  await keep("shelf", shelf);
  const off = now - answer.value.serverTime;
  return { shelf, refused: after.refused, notices: Math.abs(off) > CLOCK_OFF_MS ? [wrongClockWords(off)] : [] };
}
