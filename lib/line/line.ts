/**
 * The line of one room: which screens are connected, which one leads, and its class. It is a reducer, so tests can show
 * that two screens never lead at once. Only the leader of the current term moves the class. A screen becomes leader when
 * nobody leads, when the leader agrees, or when the leader has been gone for a while and a person confirms.
 * Times are ms on the server's monotonic clock unless a name says `Wall`.
 */
import { standingEvents } from "#lib/floor/log.ts";
import type { ScreenView } from "#lib/protocol/line-wire.ts";
import type { LineClass, LineMemory, LineRefusal } from "./messages.ts";

/** A leader gone for this long may be replaced: a reloaded page is back by then. */
export const ABSENT_MS = 20_000;
/** After this long a leader that is gone stops leading, and lost screens are no longer listed. */
export const FORGET_MS = 10 * 60_000;

export interface LineScreen {
  /** The device's id. A device has one place on the line. */
  readonly id: string;
  readonly label: string;
  readonly view: ScreenView;
  /** When contact was lost; null while it is connected. */
  readonly goneSince: number | null;
}
interface Leader {
  readonly id: string;
  readonly label: string;
  /** ms since the epoch, for people. */
  readonly sinceWall: number;
}
export interface RoomLine {
  /** Goes up by one whenever the leader changes, also to nobody. */
  readonly term: number;
  readonly leader: Leader | null;
  /** The screen that asks to lead. */
  readonly asked: { readonly id: string; readonly label: string } | null;
  /** The class as the leader last sent it. Kept while the leader is gone. */
  readonly told: LineClass | null;
  readonly screens: readonly LineScreen[];
  /** Restored from a screen's memory and untouched since, so that a memory of a later term still replaces it. */
  readonly remembered: boolean;
}
export const EMPTY_LINE: RoomLine = { term: 0, leader: null, asked: null, told: null, screens: [], remembered: false };

interface LineTime {
  readonly now: number;
  readonly wall: number;
}
export type LineAct = LineTime &
  (
    | {
        readonly t: "join";
        readonly screen: Omit<LineScreen, "goneSince">;
        readonly memory: LineMemory | null;
      }
    /** `lost`: it went without saying so. */
    | { readonly t: "leave"; readonly id: string; readonly lost: boolean }
    | { readonly t: "view"; readonly id: string; readonly view: ScreenView }
    | { readonly t: "lead"; readonly id: string; readonly term: number; readonly sure: boolean }
    | { readonly t: "withdraw"; readonly id: string }
    | { readonly t: "answer"; readonly id: string; readonly term: number; readonly to: string; readonly yes: boolean }
    | { readonly t: "class"; readonly id: string; readonly term: number; readonly class: LineClass }
    | { readonly t: "step-down"; readonly id: string; readonly term: number }
    | { readonly t: "tick" }
  );

export interface Outcome {
  /** The same object when nothing changed. */
  readonly line: RoomLine;
  /** An answer for one screen alone. */
  readonly refused?: { readonly to: string; readonly why: LineRefusal };
}

/** How long the leader has been gone, ms; null when it is connected or nobody leads. */
export function leaderGoneFor({ leader, screens }: RoomLine, now: number): number | null {
  const goneSince = screens.find(({ id }) => id === leader?.id)?.goneSince ?? null;
  return leader && goneSince !== null ? now - goneSince : null;
}

/** True when another screen may take over without asking the leader. */
export const isLeaderAbsent = (line: RoomLine, now: number): boolean => (leaderGoneFor(line, now) ?? 0) >= ABSENT_MS;

export function afterAct(before: RoomLine, act: LineAct): Outcome {
  const line = forgotten(before, act.now);
  switch (act.t) {
    case "tick":
      return { line };
    case "join":
      return { line: joined(line, act) };
    case "leave":
      return { line: left(line, act) };
    case "view":
      return { line: { ...line, screens: line.screens.map((s) => (s.id === act.id ? { ...s, view: act.view } : s)) } };
    case "lead":
      return asksToLead(line, act);
    case "withdraw":
      return { line: line.asked?.id === act.id ? { ...line, asked: null } : line };
    case "answer":
      return answered(line, act);
    case "class":
      if (!leads(line, act)) return { line, refused: { to: act.id, why: "not-leading" } };
      return { line: { ...line, told: act.class, remembered: false } };
    case "step-down":
      if (!leads(line, act)) return { line, refused: { to: act.id, why: "not-leading" } };
      return { line: { ...nobodyLeads(line), told: null } };
  }
}

const leads = (line: RoomLine, { id, term }: { id: string; term: number }): boolean =>
  line.leader?.id === id && line.term === term;

const nobodyLeads = (line: RoomLine): RoomLine => ({
  ...line,
  term: line.term + 1,
  leader: null,
  asked: null,
  remembered: false,
});

function granted(line: RoomLine, id: string, { wall }: LineTime): RoomLine {
  const label = line.screens.find((screen) => screen.id === id)?.label ?? "";
  const leader = { id, label, sinceWall: wall };
  return { ...line, term: line.term + 1, leader, asked: null, remembered: false };
}

function forgotten(line: RoomLine, now: number): RoomLine {
  const goneFor = leaderGoneFor(line, now);
  const is = goneFor !== null && goneFor >= FORGET_MS ? nobodyLeads(line) : line;
  const screens = is.screens.filter(({ goneSince }) => goneSince === null || now - goneSince < FORGET_MS);
  return screens.length === is.screens.length ? is : { ...is, screens };
}

type Act<T extends LineAct["t"]> = Extract<LineAct, { t: T }>;

function joined(before: RoomLine, { screen, memory, now }: Act<"join">): RoomLine {
  const recall = memory ? recalled(before, memory, now) : before;
  // The studio's name for the screen replaces the one in a memory.
  const { leader } = recall;
  const line = leader?.id === screen.id ? { ...recall, leader: { ...leader, label: screen.label } } : recall;
  const others = line.screens.filter(({ id }) => id !== screen.id);
  return { ...line, screens: [...others, { ...screen, goneSince: null }] };
}

/**
 * Far above any real term and far below what a message may carry, so that a made-up term cannot push the line past the
 * terms that other screens can send.
 */
const HIGHEST_REMEMBERED = 1_000_000;

/** Only an unused line is restored from a memory; of several memories the one with the latest term counts. */
function recalled(line: RoomLine, { term, leader }: LineMemory, now: number): RoomLine {
  if ((line.term > 0 && !line.remembered) || term <= line.term || term > HIGHEST_REMEMBERED) return line;
  const known = line.screens.some(({ id }) => id === leader?.id);
  const gone = leader && { id: leader.id, label: leader.label, view: "lead" as const, goneSince: now };
  const screens = gone && !known ? [...line.screens, gone] : line.screens;
  return { ...line, term, leader, asked: null, screens, remembered: true };
}

/** A leader that leaves may come back after a reload or a network failure, so it keeps its place, except after the end. */
function left(before: RoomLine, { id, lost, now }: Act<"leave">): RoomLine {
  const line = before.leader?.id === id && hasEnded(before.told) ? { ...nobodyLeads(before), told: null } : before;
  const stays = lost || line.leader?.id === id;
  const screens = stays
    ? line.screens.map((s) => (s.id === id && s.goneSince === null ? { ...s, goneSince: now } : s))
    : line.screens.filter((s) => s.id !== id);
  return { ...line, screens, asked: line.asked?.id === id ? null : line.asked };
}

const hasEnded = (told: LineClass | null): boolean =>
  standingEvents(told?.log ?? []).some(({ type }) => type === "end");

function asksToLead(line: RoomLine, act: Act<"lead">): Outcome {
  const { id, term, sure, now } = act;
  const screen = line.screens.find((s) => s.id === id);
  // The screen asked by an outdated term: it is told, and may ask again.
  if (screen?.goneSince !== null || term !== line.term) return { line, refused: { to: id, why: "changed" } };
  if (line.leader?.id === id) return { line };
  if (!line.leader || (sure && isLeaderAbsent(line, now))) return { line: granted(line, id, act) };
  if (line.asked && line.asked.id !== id) return { line, refused: { to: id, why: "asked-already" } };
  return { line: line.asked ? line : { ...line, asked: { id, label: screen.label } } };
}

function answered(line: RoomLine, act: Act<"answer">): Outcome {
  if (!leads(line, act)) return { line, refused: { to: act.id, why: "not-leading" } };
  if (line.asked?.id !== act.to) return { line, refused: { to: act.id, why: "nobody-asks" } };
  if (act.yes) return { line: granted(line, act.to, act) };
  return { line: { ...line, asked: null }, refused: { to: act.to, why: "declined" } };
}
