/**
 * The lines of all rooms, in memory only: a server that was started again gets them back from the screens. Every change
 * goes through the reducer of `lib/line/line.ts` and then to every screen of the room.
 */

import type { FromServer } from "#lib/line/from-server.ts";
import { afterAct, EMPTY_LINE, type LineAct, type Outcome, type RoomLine } from "#lib/line/line.ts";
import type { Hello, ToServer } from "#lib/line/messages.ts";
import type { SyncLog } from "#server/sync/host.ts";
import type { LineHost } from "./host.ts";
import type { LineLimits } from "./limits.ts";
import type { Seat, SeatOwner } from "./seat.ts";

export interface LineClockSource {
  /** ms, only ever forward. */
  now(): number;
  /** ms since the epoch. */
  wall(): number;
  /** Names this run of the server: its clock begins anew with the next. */
  readonly epoch: string;
}
export interface LinesSetup {
  readonly host: LineHost;
  readonly limits: LineLimits;
  readonly clock: LineClockSource;
  readonly log: SyncLog;
}
interface Room {
  line: RoomLine;
  /** By device: a device has one place. */
  readonly seats: Map<string, Seat>;
}
type Bare = LineAct extends infer A ? (A extends LineAct ? Omit<A, "now" | "wall"> : never) : never;

export interface Lines extends SeatOwner {
  /** Takes a place on the line of the device's room; a place the device held before is given up. */
  join(seat: Seat, hello: Hello): void;
  /** The line of a room as it is; for tests and the log. */
  lineOf(roomId: string): RoomLine;
  stop(): void;
}

export function createLines({ host, limits, clock, log }: LinesSetup): Lines {
  const rooms = new Map<string, Room>();
  const roomOf = (roomId: string): Room => {
    const room = rooms.get(roomId) ?? { line: EMPTY_LINE, seats: new Map() };
    rooms.set(roomId, room);
    return room;
  };

  const act = (room: Room, bare: Bare): void => {
    const { line, refused }: Outcome = afterAct(room.line, {
      ...bare,
      now: clock.now(),
      wall: clock.wall(),
    } as LineAct);
    const changed = line !== room.line;
    room.line = line;
    if (refused) room.seats.get(refused.to)?.send({ t: "refused", why: refused.why });
    if (changed) tellAll(room);
  };
  const tellAll = (room: Room): void => {
    const text = JSON.stringify({ t: "line", line: room.line } satisfies FromServer);
    for (const seat of room.seats.values()) seat.sendText(text);
  };
  const isSeated = (seat: Seat) => rooms.get(seat.device.roomId)?.seats.get(seat.device.id) === seat;

  let mark = host.cardsMark();
  const tellCards = (): void => {
    const is = host.cardsMark();
    if (is === mark) return;
    mark = is;
    for (const room of rooms.values()) for (const seat of room.seats.values()) seat.send({ t: "cards", mark });
  };

  const sweep = setInterval(() => {
    tellCards();
    for (const room of rooms.values()) {
      for (const seat of [...room.seats.values()]) if (!isStillPaired(host, seat)) seat.close("notPaired");
      act(room, { t: "tick" });
    }
  }, limits.sweepMs);
  const beat = setInterval(() => {
    for (const room of rooms.values()) for (const seat of [...room.seats.values()]) seat.beat();
  }, limits.hereMs);

  return {
    join(seat, { view, memory }) {
      const room = roomOf(seat.device.roomId);
      const { id, name } = seat.device;
      const before = room.seats.get(id);
      if (!before && room.seats.size >= limits.screens) {
        seat.close("full");
        return;
      }
      // In its place first: the page that was there before then leaves nothing behind as it goes.
      room.seats.set(id, seat);
      before?.close("replaced");
      seat.send({ t: "welcome", epoch: clock.epoch, you: id });
      seat.send({ t: "cards", mark: host.cardsMark() });
      act(room, { t: "join", screen: { id, label: name, view }, memory });
      log.info({ room: seat.device.roomId, device: id, view }, "a screen is on the line");
    },
    heard(seat, message) {
      if (!isSeated(seat)) return;
      const room = roomOf(seat.device.roomId);
      if (message.t === "class" && !host.isSigned(message.class.edition)) {
        seat.send({ t: "refused", why: "not-signed" });
      } else act(room, actOf(seat.device.id, message));
    },
    left(seat, lost) {
      if (!isSeated(seat)) return;
      const room = roomOf(seat.device.roomId);
      room.seats.delete(seat.device.id);
      act(room, { t: "leave", id: seat.device.id, lost });
    },
    lineOf: (roomId) => roomOf(roomId).line,
    stop() {
      clearInterval(sweep);
      clearInterval(beat);
      for (const room of rooms.values()) for (const seat of [...room.seats.values()]) seat.close("stopping");
    },
  };
}

function isStillPaired(host: LineHost, seat: Seat): boolean {
  const is = host.deviceOf(seat.token);
  return is !== null && is.id === seat.device.id && is.roomId === seat.device.roomId;
}

const actOf = (id: string, message: Exclude<ToServer, { t: "time" }>): Bare => ({ ...message, id });
