/** The floor page: pair the device, choose a card, make ready, run the class. One page, so that it opens with no network. */
import { useEffect, useRef, useState } from "react";
import type { Card, CardEnvelope } from "#lib/card/schema.ts";
import { verifyCard } from "#lib/card/verify-card.ts";
import { withdrawnOf } from "#lib/floor/keep-cards.ts";
import { LineOnShelf } from "../_line/line-on-shelf.tsx";
import { useLine } from "../_line/use-line.ts";
import { type KeptCardRehearsal, type KeptClass, kept } from "../_parts/kept.ts";
import { useClassLogs } from "../_parts/use-class-logs.ts";
import { useSettings } from "../_parts/use-settings.ts";
import { type ShelfState, useShelf } from "../_parts/use-shelf.ts";
import { CardShelf } from "./card-shelf.tsx";
import { NotWhole } from "./not-whole.tsx";
import { PairForm } from "./pair-form.tsx";
import { useScreens } from "./use-screens.ts";
import { useWorker } from "./use-worker.ts";

interface Chosen {
  readonly card: Card;
  readonly envelope: CardEnvelope;
}
type Screen =
  /** What runs here is being read. */
  | { readonly kind: "reading" }
  | { readonly kind: "shelf" }
  | { readonly kind: "follow" }
  | ({ readonly kind: "ready" } & Chosen)
  | ({ readonly kind: "live"; readonly running: KeptClass | null } & Chosen)
  | ({ readonly kind: "rehearsal"; readonly running: KeptCardRehearsal | null } & Chosen);

export function FloorApp() {
  const shelf = useShelf();
  const worker = useWorker();
  const screens = useScreens();
  const settings = useSettings();
  const [screen, setScreen] = useState<Screen>({ kind: "reading" });
  const { pairing } = shelf;
  const logs = useClassLogs(pairing?.token);
  const publicKey = pairing?.publicKey;
  const followerView = settings.screen === "lead" ? "demonstrator" : settings.screen;
  const line = useLine(pairing?.token, screen.kind === "follow" ? followerView : "lead");
  const { link } = line;
  useFreshCards(line.state.cards, shelf);
  const runsNothing = screen.kind !== "reading" && screen.kind !== "live";

  useEffect(() => {
    if (runsNothing) link?.runs("nothing");
  }, [link, runsNothing]);

  useEffect(() => {
    if (!publicKey) return;
    let here = true;
    firstScreen(publicKey)
      .catch((): Screen => ({ kind: "shelf" })) // no storage: the shelf says so
      .then((first) => here && setScreen((was) => (was.kind === "reading" ? first : was)));
    return () => {
      here = false;
    };
  }, [publicKey]);

  if (pairing === undefined) return <p className="visually-hidden">Reading what this device keeps.</p>;
  if (pairing === null) return <PairForm notices={shelf.notices} onPaired={shelf.paired} />;
  const toShelf = () => setScreen({ kind: "shelf" });
  const leave = () => {
    toShelf();
    logs.send().catch(() => undefined); // no storage: the shelf says so
  };
  const toFollow = () => setScreen({ kind: "follow" });
  const withdrawn = "card" in screen ? withdrawnOf(screen.card.edition, shelf.shelf.withdrawn) : undefined;
  // Withdrawn while somebody was making ready: the shelf says by whom and why.
  const toStart = screen.kind === "ready" && withdrawn;
  if (screen.kind === "reading" || screen.kind === "shelf" || toStart)
    return (
      <CardShelf
        state={shelf}
        pairing={pairing}
        worker={worker}
        logs={logs}
        onChoose={(card, envelope) => setScreen({ kind: "ready", card, envelope })}
      >
        <LineOnShelf line={line} settings={settings} onFollow={toFollow} />
      </CardShelf>
    );
  if (screens === "coming") return <p className="visually-hidden">Opening.</p>;
  if (screens === "failed") return <NotWhole onShelf={toShelf} />;
  const { FollowScreen, ReadyScreen, LiveClass, CardRehearsal } = screens;
  switch (screen.kind) {
    case "follow":
      return (
        <FollowScreen
          line={line}
          pairing={pairing}
          shelf={shelf}
          settings={settings}
          onTakeOn={(card, running) => setScreen({ kind: "live", card, envelope: running.envelope, running })}
          onLeave={toShelf}
        />
      );
    case "ready":
      return (
        <ReadyScreen
          card={screen.card}
          worker={worker}
          settings={settings}
          onBack={toShelf}
          onStart={() => setScreen({ ...screen, kind: "live", running: null })}
          onRehearse={() => setScreen({ ...screen, kind: "rehearsal", running: null })}
        />
      );
    case "live":
      return (
        <LiveClass
          card={screen.card}
          envelope={screen.envelope}
          running={screen.running}
          withdrawn={withdrawn}
          settings={settings}
          line={line}
          logs={logs}
          onFollow={toFollow}
          onLeave={leave}
        />
      );
    case "rehearsal":
      return (
        <CardRehearsal
          card={screen.card}
          envelope={screen.envelope}
          running={screen.running}
          settings={settings}
          onLeave={leave}
        />
      );
  }
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

/** A class that runs here goes on; a screen that only ever follows does so by itself; else the cards. */
async function firstScreen(publicKey: string): Promise<Screen> {
  const [running, rehearsing, settings] = await Promise.all([kept("running"), kept("rehearsing"), kept("settings")]);
  const envelope = (running ?? rehearsing)?.envelope;
  // A class begins before its card runs out; it may end after.
  const verdict = envelope && verifyCard(envelope, publicKey, Date.parse(envelope.card.issuedAt));
  if (envelope && verdict?.ok) {
    const chosen = { card: verdict.card, envelope };
    return running
      ? { kind: "live", ...chosen, running }
      : { kind: "rehearsal", ...chosen, running: rehearsing ?? null };
  }
  return { kind: (settings?.screen ?? "lead") === "lead" ? "shelf" : "follow" };
}
