/**
 * The line of one room: which screens are on it, who leads, what class is led. A reducer, so that it can be shown that two
 * screens never lead at once. Only the leader of the present term moves the class; a screen gets to lead when nobody does,
 * when the leader says yes, or when the leader has been off the line for a while and somebody is sure.
 * Times are ms of the server's forward-only clock unless a name says `Wall`.
 */
import { standingEvents } from "#lib/floor/log.ts";
import type { ScreenView } from "#lib/protocol/line-wire.ts";
import type { LineClass, LineMemory, LineRefusal } from "./messages.ts";

/** A leader off the line for this long may be taken over from: a page that is opened again is back by then. */
export const ABSENT_MS = 20_000;
/** And after this long it leads no more; a screen that went away is named no longer. */
export const FORGET_MS = 10 * 60_000;

export interface LineScreen {
  /** The device's. A device has one place on the line. */
  readonly id: string;
  readonly label: string;
  readonly view: ScreenView;
  /** When it was lost; null while it is here. */
  readonly goneSince: number | null;
}
interface Leader {
  readonly id: string;
  readonly label: string;
  /** ms since the epoch, for people. */
  readonly sinceWall: number;
}
export interface RoomLine {
  /** Goes up by one whenever another screen leads, or none. */
  readonly term: number;
  readonly leader: Leader | null;
  /** Who asks to lead. */
  readonly asked: { readonly id: string; readonly label: string } | null;
  /** What the leader last told. Stays as it is while nobody is there to tell. */
  readonly told: LineClass | null;
  readonly screens: readonly LineScreen[];
  /** Taken from what a screen remembered, and nothing was done since: a later memory counts for more. */
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
    /** `lost`: it did not say that it goes. */
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
  /** What is said to one screen alone. */
  readonly refused?: { readonly to: string; readonly why: LineRefusal };
}

/** How long the leader has been off the line, ms; null when it is here, or nobody leads. */
export function leaderGoneFor({ leader, screens }: RoomLine, now: number): number | null {
  const goneSince = screens.find(({ id }) => id === leader?.id)?.goneSince ?? null;
  return leader && goneSince !== null ? now - goneSince : null;
}

/** May the leader be taken over from without being asked? */
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
  // Its own name the studio knows better than a screen's memory does.
  const { leader } = recall;
  const line = leader?.id === screen.id ? { ...recall, leader: { ...leader, label: screen.label } } : recall;
  const others = line.screens.filter(({ id }) => id !== screen.id);
  return { ...line, screens: [...others, { ...screen, goneSince: null }] };
}

/**
 * Far beyond any term that classes come to, and far below what a message may carry: a term made up by a screen must not
 * bring the line to where no other screen can speak.
 */
const HIGHEST_REMEMBERED = 1_000_000;

/** Only a line on which nothing was done yet is taken from a memory, and of several the one of the latest term. */
function recalled(line: RoomLine, { term, leader }: LineMemory, now: number): RoomLine {
  if ((line.term > 0 && !line.remembered) || term <= line.term || term > HIGHEST_REMEMBERED) return line;
  const known = line.screens.some(({ id }) => id === leader?.id);
  const gone = leader && { id: leader.id, label: leader.label, view: "lead" as const, goneSince: now };
  const screens = gone && !known ? [...line.screens, gone] : line.screens;
  return { ...line, term, leader, asked: null, screens, remembered: true };
}

/** A leader that goes may come back: its page is opened again, its network fails. After the end there is nothing to wait for. */
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
  // Whoever asks for what they no longer see is told what there is now, and may ask again.
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
