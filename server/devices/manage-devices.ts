/** The studio's cue devices, for its manager: adding one (a pairing code, shown once), listing and removing them. */
import * as z from "zod";
import {
  listDeviceRows as allDevices,
  type DeviceRow,
  insertDevice,
  readDevice,
  revokeDevice,
} from "#db/repos/device-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { readRoom } from "#db/repos/room-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { type Actor, can, type Person } from "#lib/policy/can.ts";
import { hashToken } from "#server/auth/device.ts";
import { CODE_LIVES_MS, newPairingCode } from "#server/auth/pairing-code.ts";
import { NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import { typedLine } from "#server/base/typed-text.ts";
import type { Springline } from "#server/context/springline.ts";
import { type PairingLink, pairingLink } from "./pairing-link.ts";
import { DEVICE_ROOM_UNKNOWN } from "./refusals.ts";

type Studio = Pick<Springline, "db" | "now" | "newId">;

export const newDeviceSchema = z.strictObject({
  name: typedLine.min(1, "Enter a name for the device.").max(80, "A device's name has at most 80 characters."),
  roomId: z.string().min(1).max(64),
});

export interface NewCode extends PairingLink {
  readonly id: string;
  /** Shown once: only its hash is stored. */
  readonly code: string;
  /** ms since the epoch. */
  readonly expiresAt: number;
}

/** Errors: 403 no-right, 404 no-room. */
export function addDevice(
  app: Studio & Pick<Springline, "env">,
  actor: Actor,
  made: z.infer<typeof newDeviceSchema>,
): Result<NewCode> {
  if (actor?.kind !== "person" || !can(actor, "devices.manage")) return NO_RIGHT;
  if (!readRoom(app.db, made.roomId)) return DEVICE_ROOM_UNKNOWN;
  const code = newPairingCode();
  const device = { id: app.newId(), ...made, codeHash: hashToken(code), codeExpiresAt: app.now() + CODE_LIVES_MS };
  inTransaction(app.db, () => {
    insertDevice(app.db, { ...device, createdBy: actor.id });
    note(app, actor, "device-added", device);
  });
  return ok({ id: device.id, code, expiresAt: device.codeExpiresAt, ...pairingLink(app.env.origin, code) });
}

export interface DeviceView extends DeviceRow {
  readonly roomName: string;
  /** `code-expired`: its code was not used within ten minutes. */
  readonly state: "paired" | "waiting" | "code-expired";
}

/** Errors: 403 no-right. */
export function listDevices(app: Studio, actor: Actor): Result<readonly DeviceView[]> {
  if (!can(actor, "devices.manage")) return NO_RIGHT;
  const waits = (row: DeviceRow) => (row.codeExpiresAt ?? 0) > app.now();
  return ok(
    allDevices(app.db).map((row) => ({
      ...row,
      roomName: readRoom(app.db, row.roomId)?.name ?? "",
      state:
        row.pairedAt !== null ? ("paired" as const) : waits(row) ? ("waiting" as const) : ("code-expired" as const),
    })),
  );
}

/** Its token stops working at once; the cards on the device work until they expire. Errors: 403 no-right, 404 not-found. */
export function takeBackDevice(app: Studio, actor: Actor, id: string): Result<null> {
  if (!can(actor, "devices.manage") || actor?.kind !== "person") return NO_RIGHT;
  return inTransaction(app.db, (): Result<null> => {
    const device = readDevice(app.db, id);
    if (!device || !revokeDevice(app.db, id, app.now())) return NOT_FOUND;
    note(app, actor, "device-removed", device);
    return ok(null);
  });
}

function note(app: Studio, actor: Person, kind: string, device: Pick<DeviceRow, "id" | "name" | "roomId">): void {
  const body = { name: device.name, room: device.roomId };
  addToRecord(app.db, { at: app.now(), actorId: actor.id, subject: `device/${device.id}`, kind, body });
}
