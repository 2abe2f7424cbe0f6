/** What a paired device may have: the signed cards of its room, and nothing else. */
import { markDeviceSeen } from "#db/repos/device-repo.ts";
import { newestCardsOfRoom } from "#db/repos/edition-repo.ts";
import { readRoom } from "#db/repos/room-repo.ts";
import type { CardEnvelope } from "#lib/card/schema.ts";
import { canDevice, type Device } from "#lib/policy/can.ts";
import { NO_RIGHT, ok, type Result } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";

export interface RoomCards {
  readonly room: { readonly id: string; readonly name: string };
  readonly cards: readonly CardEnvelope[];
  /** When each plan is next taught here, by plan id: ISO date and time of the studio's wall clock, `2026-05-04T18:00`. */
  readonly nextSlots: Readonly<Record<string, string>>;
  /** ms since the epoch, so that a device with a wrong clock can say so. */
  readonly serverTime: number;
}

/** Errors: 403 no-right. Notes that the device was seen. */
export function readRoomCards(app: Pick<Springline, "db" | "now">, device: Device): Result<RoomCards> {
  if (!canDevice(device, "card.fetch", device.roomId)) return NO_RIGHT;
  const now = app.now();
  markDeviceSeen(app.db, device.id, now);
  const room = { id: device.roomId, name: readRoom(app.db, device.roomId)?.name ?? "" };
  return ok({ room, cards: newestCardsOfRoom(app.db, device.roomId), nextSlots: {}, serverTime: now });
}
