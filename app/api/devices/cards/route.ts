import { readRoomCards } from "#server/devices/read-cards.ts";
import { guardedDevice } from "#server/http/respond.ts";

export const GET = guardedDevice({}, ({ app, device }) => readRoomCards(app, device));
