/** What a paired device receives: the signed cards of its room. */

import { markDeviceSeen } from "#db/repos/device-repo.ts";
import { newestEdition, newestEditionsOfRoom } from "#db/repos/edition-repo.ts";
import { namesById } from "#db/repos/people-repo.ts";
import { readPlanRow } from "#db/repos/plan-repo.ts";
import { readRoom } from "#db/repos/room-repo.ts";
import { readWithdrawal, withdrawalsOfRoom } from "#db/repos/withdrawal-repo.ts";
import { sealCard } from "#lib/card/build-card.ts";
import type { CardEnvelope } from "#lib/card/schema.ts";
import type { WithdrawnCard } from "#lib/floor/keep-cards.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { canDevice, type Device } from "#lib/policy/can.ts";
import { NO_RIGHT, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { readSoundEdition } from "#server/editions/sound-edition.ts";
import { studioFormats } from "#server/formats/formats.ts";
import { withdrawalView } from "#server/news/plan-summaries.ts";
import { nextSlotsOfRoom } from "./room-slots.ts";

type CardReader = Pick<Springline, "db" | "keys" | "log">;

export interface CardsForRoom {
  readonly room: { readonly id: string; readonly name: string };
  readonly cards: readonly CardEnvelope[];
  /** When each plan is next taught here, by plan id: date and time on the studio's clock, `2026-05-04T18:00`. */
  readonly nextSlots: Readonly<Record<string, string>>;
  /** What changed of that class since its month was signed off, by plan id: "moved from 18:00". */
  readonly slotMarks: Readonly<Record<string, readonly string[]>>;
  /** Editions that this room's devices may have but must not start any more. */
  readonly withdrawn: readonly WithdrawnCard[];
  /** In which the device writes days, times and lengths: the studio's. */
  readonly formats: Formats;
  /** ms since the epoch, so that a device can notice that its clock is wrong. */
  readonly serverTime: number;
}

/** Errors: 403 no-right. Notes that the device was seen. */
export function readRoomCards(
  app: CardReader & Pick<Springline, "now" | "documents">,
  device: Device,
): Result<CardsForRoom> {
  if (!canDevice(device, "card.fetch", device.roomId)) return NO_RIGHT;
  const now = app.now();
  markDeviceSeen(app.db, device.id, now);
  const room = { id: device.roomId, name: readRoom(app.db, device.roomId)?.name ?? "" };
  const slots = nextSlotsOfRoom(app, device.roomId);
  const own = newestEditionsOfRoom(app.db, device.roomId).flatMap(
    ({ planId, number }) => soundCard(app, planId, number) ?? [],
  );
  const known = new Set(own.map((envelope) => envelope.card.edition.planId));
  const brought = [...slots.keys()].filter((planId) => !known.has(planId)).flatMap((id) => newestCard(app, id) ?? []);
  const next = [...slots];
  return ok({
    room,
    cards: byNextClass([...own, ...brought], [...slots.keys()]),
    nextSlots: Object.fromEntries(next.map(([planId, { at }]) => [planId, at])),
    slotMarks: Object.fromEntries(next.flatMap(([id, { marks }]) => (marks.length > 0 ? [[id, marks]] : []))),
    withdrawn: withdrawnCards(app, device.roomId, [...slots.keys()]),
    formats: studioFormats(app),
    serverTime: now,
  });
}

/** Those that are taught next first; those without a class as they are. */
function byNextClass(cards: readonly CardEnvelope[], planIds: readonly string[]): CardEnvelope[] {
  const place = new Map(planIds.map((id, i) => [id, i]));
  const of = ({ card }: CardEnvelope) => place.get(card.edition.planId) ?? planIds.length;
  return [...cards].sort((a, b) => of(a) - of(b));
}

/** The card of a plan that the programme schedules in this room although it was signed for another. */
function newestCard(app: CardReader, planId: string): CardEnvelope | undefined {
  const row = readPlanRow(app.db, planId);
  const head = row?.deletedAt === null ? newestEdition(app.db, planId) : undefined;
  if (!head || readWithdrawal(app.db, planId, head.number)) return undefined;
  return soundCard(app, planId, head.number);
}

/** Undefined for a damaged edition too: it is not replaced by an older one. */
function soundCard(app: CardReader, planId: string, number: number): CardEnvelope | undefined {
  const edition = readSoundEdition(app, planId, number);
  return edition === "damaged" || edition === undefined ? undefined : underOneKey(app, edition.card);
}

/**
 * A device knows one key, that of its pairing. A card that was signed with an older one, as everything is in a studio that was
 * imported, is sealed anew on its way, after its own signature held; the edition stays as it was signed.
 */
function underOneKey({ keys }: CardReader, envelope: CardEnvelope): CardEnvelope {
  return envelope.keyId === keys.keyId ? envelope : sealCard(envelope.card, keys.keyId, (bytes) => keys.sign(bytes));
}

function withdrawnCards(app: Pick<Springline, "db">, roomId: string, brought: readonly string[]): WithdrawnCard[] {
  const names = namesById(app.db);
  const rows = withdrawalsOfRoom(app.db, roomId, brought);
  return rows.map((row) => ({ planId: row.planId, number: row.number, ...withdrawalView(row, names) }));
}
