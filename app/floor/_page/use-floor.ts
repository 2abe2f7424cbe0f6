/** All that the floor page holds: its pairing and editions, its line to other screens, and the screen that is shown. */
import { useEffect, useRef, useState } from "react";
import type { Card, CardEnvelope } from "#lib/card/schema.ts";
import { verifyCard } from "#lib/card/verify-card.ts";
import { type FloorLine, useLine } from "../_line/use-line.ts";
import type { WorkerState } from "../_parts/floor-words.ts";
import { type KeptCardRehearsal, type KeptClass, kept } from "../_parts/kept.ts";
import { type ClassLogs, useClassLogs } from "../_parts/use-class-logs.ts";
import { type Settings, useSettings } from "../_parts/use-settings.ts";
import { type ShelfState, useShelf } from "../_parts/use-shelf.ts";
import { useWorker } from "./use-worker.ts";

interface Chosen {
  readonly card: Card;
  readonly envelope: CardEnvelope;
}
export type ClassScreenOf =
  | { readonly kind: "follow" }
  | ({ readonly kind: "ready" } & Chosen)
  | ({ readonly kind: "live"; readonly running: KeptClass | null } & Chosen)
  | ({ readonly kind: "rehearsal"; readonly running: KeptCardRehearsal | null } & Chosen);

type ScreenOf =
  /** What runs here is being read from the device. */
  { readonly kind: "reading" } | { readonly kind: "shelf" } | ClassScreenOf;

export interface Floor {
  readonly shelf: ShelfState;
  readonly worker: WorkerState;
  readonly settings: Settings;
  readonly logs: ClassLogs;
  readonly line: FloorLine;
  readonly screen: ScreenOf;
  show(screen: ScreenOf): void;
  toShelf(): void;
  /** To the shelf after a class or a rehearsal: its log is sent. */
  leave(): void;
}

export function useFloor(): Floor {
  const shelf = useShelf();
  const worker = useWorker();
  const settings = useSettings();
  const { pairing } = shelf;
  const [screen, show] = useFirstScreen(pairing?.publicKey);
  const logs = useClassLogs(pairing?.token);
  const followerView = settings.screen === "lead" ? "demonstrator" : settings.screen;
  const line = useLine(pairing?.token, screen.kind === "follow" ? followerView : "lead");
  const { link } = line;
  useFreshCards(line.state.cards, shelf);
  const runsNothing = screen.kind !== "reading" && screen.kind !== "live";
  useEffect(() => {
    if (runsNothing) link?.runs("nothing");
  }, [link, runsNothing]);
  const toShelf = () => show({ kind: "shelf" });
  return {
    ...{ shelf, worker, settings, logs, line, screen, show, toShelf },
    leave: () => {
      toShelf();
      logs.send().catch(() => undefined); // no storage: the shelf says so
    },
  };
}

function useFirstScreen(publicKey: string | undefined): [ScreenOf, (screen: ScreenOf) => void] {
  const [screen, setScreen] = useState<ScreenOf>({ kind: "reading" });
  useEffect(() => {
    if (!publicKey) return;
    let here = true;
    firstScreen(publicKey)
      .catch((): ScreenOf => ({ kind: "shelf" })) // no storage: the shelf says so
      .then((first) => here && setScreen((was) => (was.kind === "reading" ? first : was)));
    return () => {
      here = false;
    };
  }, [publicKey]);
  return [screen, setScreen];
}

/** A class that runs here goes on; a screen that only ever follows does so by itself; else the editions are shown. */
async function firstScreen(publicKey: string): Promise<ScreenOf> {
  const [running, rehearsing, settings] = await Promise.all([kept("running"), kept("rehearsing"), kept("settings")]);
  const envelope = (running ?? rehearsing)?.envelope;
  // A class starts before its card runs out; it may end after.
  const verdict = envelope && verifyCard(envelope, publicKey, Date.parse(envelope.card.issuedAt));
  if (envelope && verdict?.ok) {
    const chosen = { card: verdict.card, envelope };
    return running
      ? { kind: "live", ...chosen, running }
      : { kind: "rehearsal", ...chosen, running: rehearsing ?? null };
  }
  return { kind: (settings?.screen ?? "lead") === "lead" ? "shelf" : "follow" };
}

/** Fetches the cards again when the studio says that editions were signed or withdrawn, also while a class runs. */
function useFreshCards(mark: string | null, { pairing, refresh }: ShelfState): void {
  const fetched = useRef<string | null>(null);
  const paired = Boolean(pairing);
  useEffect(() => {
    if (mark === null || !paired || mark === fetched.current) return;
    fetched.current = mark;
    refresh().catch(() => undefined); // no storage: the shelf says so
  }, [mark, paired, refresh]);
}
