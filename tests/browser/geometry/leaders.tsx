/** The coach's own screen at a moment of a class. */
import { LiveClass } from "#app/floor/_class/live-class.tsx";
import { UNKNOWN_LINK } from "#lib/client/link-state.ts";
import { FLOOR_SETTINGS } from "#lib/floor/settings.ts";
import type { StagedClass } from "./cards.ts";

/** The time on the stopped clock, ms. */
export const STOPPED = 100_000_000;
const nothing = () => undefined;

interface Props extends StagedClass {
  readonly at: number;
  /** Seconds by which the class is late, from a hold at its start. */
  readonly lateS?: number;
  /** It is on hold now. */
  readonly held?: boolean;
  /** Its edition was withdrawn during the class, with the longest reason. */
  readonly withdrawn?: boolean;
}

const LONG_REASON =
  "The firm spring of the third machine has lost its preload and was taken off this morning; the standing work in the second block cannot be given as it is written, so please use edition five or ask Ines. Thanks.";

export function LeadProbe({ envelope, at, lateS = 0, held: stands = false, withdrawn = false }: Props) {
  const { card } = envelope;
  const began = STOPPED - (at + lateS) * 1000;
  const held = [
    { type: "hold" as const, at: began },
    { type: "resume" as const, at: began + lateS * 1000 },
  ];
  const hold = { type: "hold" as const, at: STOPPED };
  const running = {
    envelope,
    log: [{ type: "start" as const, at: began }, ...(lateS > 0 ? held : []), ...(stands ? [hold] : [])],
    anchor: { mono: STOPPED, wall: STOPPED },
    sessionId: "0".repeat(32),
  };
  return (
    <LiveClass
      card={card}
      envelope={envelope}
      running={running}
      withdrawn={
        withdrawn
          ? { ...card.edition, byName: "Ines Duarte", at: Date.UTC(2026, 10, 29), reason: LONG_REASON.slice(0, 200) }
          : undefined
      }
      settings={{ ...FLOOR_SETTINGS, set: nothing }}
      line={{ state: UNKNOWN_LINK, link: null }}
      logs={{ waiting: 0, refused: null, send: async () => undefined }}
      onFollow={nothing}
      onLeave={nothing}
    />
  );
}
