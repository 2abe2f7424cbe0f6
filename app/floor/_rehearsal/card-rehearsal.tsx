"use client";
/** An edition rehearsed on the room's device; what was measured is sent to the studio as a log of its own kind. */
import { useState } from "react";
import type { Card, CardEnvelope } from "#lib/card/schema.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { BACK_TO_EDITIONS } from "../_parts/floor-words.ts";
import { type KeptCardRehearsal, keep, keepLog, letGo } from "../_parts/kept.ts";
import type { Settings } from "../_parts/use-settings.ts";
import { RehearsalDone } from "./rehearsal-done.tsx";
import { RehearsalScreen } from "./rehearsal-screen.tsx";
import { REHEARSE, SENT_TO_STUDIO } from "./rehearsal-words.ts";

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
    // The log first: a page that is closed in between files the same rehearsal again.
    await keepLog(log);
    await letGo("rehearsing");
  };
  if (told) {
    return (
      <RehearsalDone card={card} log={told}>
        <p>
          {SENT_TO_STUDIO}
          <em>{REHEARSE}</em>.
        </p>
        {/* biome-ignore lint/a11y/noAutofocus: the one thing left to do on this screen */}
        <button type="button" className="button button-strong" onClick={onLeave} autoFocus>
          {BACK_TO_EDITIONS}
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
        keep("rehearsing", { envelope, kept }).catch(() => undefined); // without storage it still runs, until the page is reloaded
      }}
      onDone={(log) => {
        file(log).catch(() => undefined); // no storage: the shelf says so
      }}
    />
  );
}
