"use client";
/** A signed class rehearsed on the room's device: what it was goes to the studio as a log of its own kind. */
import { useState } from "react";
import type { Card, CardEnvelope } from "#lib/card/schema.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { type KeptCardRehearsal, keep, keepLog, letGo } from "../_parts/kept.ts";
import type { Settings } from "../_parts/use-settings.ts";
import { RehearsalDone } from "./rehearsal-done.tsx";
import { RehearsalScreen } from "./rehearsal-screen.tsx";

interface Props {
  readonly card: Card;
  readonly envelope: CardEnvelope;
  readonly running: KeptCardRehearsal | null;
  readonly settings: Settings;
  onLeave(): void;
}

export function CardRehearsal({ card, envelope, running, settings, onLeave }: Props) {
  const [told, setTold] = useState<ClassLog | null>(null);
  const file = async (log: ClassLog) => {
    setTold(log);
    // The log first: a page that goes away in between files the same rehearsal again.
    await keepLog(log);
    await letGo("rehearsing");
  };
  if (told) {
    return (
      <RehearsalDone card={card} log={told}>
        <p>
          It goes to the studio with the next network. Whoever writes the plan finds it there under <em>Rehearsals</em>.
        </p>
        {/* biome-ignore lint/a11y/noAutofocus: the one thing left to do on this screen */}
        <button type="button" className="button button-strong" onClick={onLeave} autoFocus>
          Back to the cards
        </button>
      </RehearsalDone>
    );
  }
  return (
    <RehearsalScreen
      card={card}
      of={`edition ${card.edition.number} · ${card.room.name}`}
      settings={settings}
      resumed={running?.kept ?? null}
      keep={(kept) => {
        keep("rehearsing", { envelope, kept }).catch(() => undefined); // it goes on without
      }}
      onDone={(log) => {
        file(log).catch(() => undefined); // no storage: the shelf says so
      }}
    />
  );
}
