"use client";
/** The floor page: pair the device, choose a card, make ready, run the class. One page, so that it opens with no network. */
import { useEffect, useState } from "react";
import type { Card, CardEnvelope } from "#lib/card/schema.ts";
import { verifyCard } from "#lib/card/verify-card.ts";
import { CardShelf } from "./card-shelf.tsx";
import { kept, type Running, type RunningRehearsal } from "./kept.ts";
import { LiveClass } from "./live-class.tsx";
import { PairForm } from "./pair-form.tsx";
import { ReadyScreen } from "./ready-screen.tsx";
import { CardRehearsal } from "./rehearsal/card-rehearsal.tsx";
import { useClassLogs } from "./use-class-logs.ts";
import { useSettings } from "./use-settings.ts";
import { useShelf } from "./use-shelf.ts";
import { useWorker } from "./use-worker.ts";

interface Chosen {
  readonly card: Card;
  readonly envelope: CardEnvelope;
}
type Screen =
  | { readonly kind: "shelf" }
  | ({ readonly kind: "ready" } & Chosen)
  | ({ readonly kind: "live"; readonly running: Running | null } & Chosen)
  | ({ readonly kind: "rehearsal"; readonly running: RunningRehearsal | null } & Chosen);

export function FloorApp() {
  const shelf = useShelf();
  const worker = useWorker();
  const settings = useSettings();
  const [screen, setScreen] = useState<Screen>({ kind: "shelf" });
  const { pairing } = shelf;
  const logs = useClassLogs(pairing?.token);
  const publicKey = pairing?.publicKey;

  useEffect(() => {
    if (!publicKey) return;
    let here = true;
    Promise.all([kept("running"), kept("rehearsing")])
      .then(([running, rehearsal]) => {
        const envelope = (running ?? rehearsal)?.envelope;
        // A class begins before its card runs out; it may end after.
        const verdict = envelope && verifyCard(envelope, publicKey, Date.parse(envelope.card.issuedAt));
        if (!here || !envelope || !verdict?.ok) return;
        const chosen = { card: verdict.card, envelope };
        if (running) setScreen({ kind: "live", ...chosen, running });
        else setScreen({ kind: "rehearsal", ...chosen, running: rehearsal ?? null });
      })
      .catch(() => undefined); // no storage: the shelf says so
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
  switch (screen.kind) {
    case "shelf":
      return (
        <CardShelf
          state={shelf}
          pairing={pairing}
          worker={worker}
          logs={logs}
          onChoose={(card, envelope) => setScreen({ kind: "ready", card, envelope })}
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
          settings={settings}
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
