/** A screen that follows, at a moment of the class that another screen leads. */
import { FollowScreen } from "#app/floor/_line/follow-screen.tsx";
import type { LineLink } from "#lib/client/line-link.ts";
import type { LinkState } from "#lib/client/link-state.ts";
import { FLOOR_SETTINGS } from "#lib/floor/settings.ts";
import { lineClassOf } from "#lib/line/class.ts";
import type { FollowerView } from "#lib/protocol/line-wire.ts";
import type { StagedClass } from "./cards.ts";
import { STOPPED } from "./leaders.tsx";

interface Props extends StagedClass {
  readonly screen: FollowerView;
  readonly at: number;
  /** The class is on hold. */
  readonly held?: boolean;
  /** The leader has not been heard for a while. */
  readonly alone?: boolean;
  /** A new number forces a new drawing. */
  readonly n: number;
}
const UNHEARD_MS = 28_000;
const nothing = () => undefined;

export function LineProbe({ envelope, publicKey, screen, at, n, held = false, alone = false }: Props) {
  const { card } = envelope;
  const session = String(n).padStart(16, "0");
  const told = lineClassOf(card, session, [
    { type: "start", at: STOPPED - at * 1000 },
    ...(held ? [{ type: "hold" as const, at: STOPPED }] : []),
  ]);
  const leader = { id: "coach", label: "Coach's tablet", sinceWall: STOPPED };
  const state: LinkState = {
    contact: alone ? "off" : "on",
    heardAt: alone ? STOPPED - UNHEARD_MS : STOPPED,
    sentence: null,
    noLive: null,
    stopping: false,
    you: "me",
    cards: null,
    refusal: null,
    followed: told,
    line: {
      term: 1,
      leader,
      asked: null,
      told,
      remembered: false,
      screens: [
        { id: "coach", label: leader.label, view: "lead", goneSince: null },
        { id: "me", label: "This screen", view: screen, goneSince: null },
      ],
    },
  };
  const link: LineLink = {
    state,
    classTime: () => STOPPED,
    studioNow: () => STOPPED,
    toLocal: (log) => log,
    runs: nothing,
    setView: nothing,
    lead: nothing,
    withdraw: nothing,
    answer: nothing,
    retry: nothing,
    lose: nothing,
    close: nothing,
  };
  return (
    <FollowScreen
      line={{ state, link }}
      pairing={{
        token: "",
        device: { id: "me", name: "This screen" },
        room: card.room,
        studio: card.studio,
        publicKey,
      }}
      shelf={{
        pairing: null,
        shelf: shelfOf(envelope),
        refreshing: false,
        refused: [],
        notices: [],
        refresh: async () => undefined,
        paired: async () => undefined,
        forget: async () => undefined,
      }}
      settings={{ ...FLOOR_SETTINGS, screen, set: nothing }}
      onTakeOn={nothing}
      onLeave={nothing}
    />
  );
}

type Shelf = Parameters<typeof FollowScreen>[0]["shelf"]["shelf"];
const shelves = new Map<unknown, Shelf>();

/** The same list for the same card, so that a card is verified once. */
function shelfOf(envelope: StagedClass["envelope"]): Shelf {
  const known = shelves.get(envelope);
  if (known) return known;
  const { planId } = envelope.card.edition;
  const made: Shelf = { cards: [{ planId, envelope }] as unknown as Shelf["cards"], nextSlots: {}, refreshedAt: 0 };
  shelves.set(envelope, made);
  return made;
}
