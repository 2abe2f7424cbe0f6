/**
 * The lines of all rooms, in memory only: after a restart the server gets them back from the screens. Every change goes
 * through the reducer in `lib/line/line.ts` and then to every screen of the room.
 */

import type { FromServer } from "#lib/line/from-server.ts";
import { afterAct, EMPTY_LINE, type LineAct, type Outcome, type RoomLine } from "#lib/line/line.ts";
import type { Hello, ToServer } from "#lib/line/messages.ts";
import type { EventLog } from "#server/base/log.ts";
import type { LineHost } from "./host.ts";
import type { LineLimits } from "./limits.ts";
import type { Seat, SeatOwner } from "./seat.ts";

export interface LineClockSource {
  /** ms; never goes back. */
  now(): number;
  /** ms since the epoch. */
  wall(): number;
  /** The id of this run of the server: the next run has another clock. */
  readonly epoch: string;
}
export interface LinesSetup {
  readonly host: LineHost;
  readonly limits: LineLimits;
  readonly clock: LineClockSource;
  readonly log: EventLog;
}
interface FloorRoom {
  line: RoomLine;
  /** By device: a device has one place. */
  readonly seats: Map<string, Seat>;
}
type Bare = LineAct extends infer A ? (A extends LineAct ? Omit<A, "now" | "wall"> : never) : never;

export interface Lines extends SeatOwner {
  /** Takes a place on the line of the device's room; a place the device held before is given up. */
  join(seat: Seat, hello: Hello): void;
  /** The line of a room as it is now; for tests and the log. */
  lineOf(roomId: string): RoomLine;
  /** Screens that have a place. */
  seated(): number;
  stop(): void;
}

export const createLines = (setup: LinesSetup): Lines => new RoomLines(setup);

class RoomLines implements Lines {
  private readonly rooms = new Map<string, FloorRoom>();
  private readonly setup: LinesSetup;
  /** From the first screen on: a studio that nobody comes to is not woken for nothing. */
  private timers: readonly NodeJS.Timeout[] = [];
  private cardsMark: string;

  constructor(setup: LinesSetup) {
    this.setup = setup;
    this.cardsMark = setup.host.cardsMark();
  }

  join(seat: Seat, { view, memory }: Hello): void {
    const { host, limits, clock, log } = this.setup;
    const room = this.roomOf(seat.device.roomId);
    const { id, name } = seat.device;
    const before = room.seats.get(id);
    if (!before && room.seats.size >= limits.screens) {
      seat.close("full");
      return;
    }
    // Seated first: when the page that was there before leaves, it then takes nothing with it.
    room.seats.set(id, seat);
    before?.close("replaced");
    this.beginTimers();
    seat.send({ t: "welcome", epoch: clock.epoch, you: id });
    seat.send({ t: "cards", mark: host.cardsMark() });
    this.act(room, { t: "join", screen: { id, label: name, view }, memory });
    log.info({ room: seat.device.roomId, device: id, view }, "a screen joined the line");
  }

  heard(seat: Seat, message: Exclude<ToServer, { t: "time" }>): void {
    if (!this.isSeated(seat)) return;
    if (message.t === "class" && !this.setup.host.isSigned(message.class.edition)) {
      seat.send({ t: "refused", why: "not-signed" });
    } else this.act(this.roomOf(seat.device.roomId), actOf(seat.device.id, message));
  }

  left(seat: Seat, lost: boolean): void {
    if (!this.isSeated(seat)) return;
    const room = this.roomOf(seat.device.roomId);
    room.seats.delete(seat.device.id);
    this.act(room, { t: "leave", id: seat.device.id, lost });
  }

  lineOf(roomId: string): RoomLine {
    return this.roomOf(roomId).line;
  }

  seated(): number {
    return this.seats().length;
  }

  stop(): void {
    for (const timer of this.timers) clearInterval(timer);
    for (const seat of this.seats()) seat.close("stopping");
  }

  private roomOf(roomId: string): FloorRoom {
    const room = this.rooms.get(roomId) ?? { line: EMPTY_LINE, seats: new Map() };
    this.rooms.set(roomId, room);
    return room;
  }

  private isSeated(seat: Seat): boolean {
    return this.rooms.get(seat.device.roomId)?.seats.get(seat.device.id) === seat;
  }

  /** A copy: closing one takes it off the line. */
  private seats(): Seat[] {
    return [...this.rooms.values()].flatMap((room) => [...room.seats.values()]);
  }

  private act(room: FloorRoom, bare: Bare): void {
    const { clock } = this.setup;
    const act = { ...bare, now: clock.now(), wall: clock.wall() } as LineAct;
    const { line, refused }: Outcome = afterAct(room.line, act);
    const changed = line !== room.line;
    room.line = line;
    if (refused) room.seats.get(refused.to)?.send({ t: "refused", why: refused.why });
    if (changed) this.tellAll(room);
  }

  private tellAll(room: FloorRoom): void {
    const text = JSON.stringify({ t: "line", line: room.line } satisfies FromServer);
    for (const seat of room.seats.values()) seat.sendText(text);
  }

  private beginTimers(): void {
    if (this.timers.length > 0) return;
    const { sweepMs, hereMs } = this.setup.limits;
    this.timers = [setInterval(() => this.sweep(), sweepMs), setInterval(() => this.beat(), hereMs)];
  }

  private sweep(): void {
    // With nobody there the database is left alone; who joins is told the mark.
    if (this.seats().length > 0) this.tellCards();
    for (const room of this.rooms.values()) {
      for (const seat of [...room.seats.values()]) if (!isStillPaired(this.setup.host, seat)) seat.close("notPaired");
      this.act(room, { t: "tick" });
    }
  }

  /** Editions were signed or withdrawn: every screen looks at its cards again. */
  private tellCards(): void {
    const mark = this.setup.host.cardsMark();
    if (mark === this.cardsMark) return;
    this.cardsMark = mark;
    for (const seat of this.seats()) seat.send({ t: "cards", mark });
  }

  private beat(): void {
    for (const seat of this.seats()) seat.beat();
  }
}

function isStillPaired(host: LineHost, seat: Seat): boolean {
  const is = host.deviceOf(seat.token);
  return is !== null && is.id === seat.device.id && is.roomId === seat.device.roomId;
}

const actOf = (id: string, message: Exclude<ToServer, { t: "time" }>): Bare => ({ ...message, id });
