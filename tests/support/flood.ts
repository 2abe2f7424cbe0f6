/** Sockets that send to a server under attack as fast as it accepts, and the frames they send. */
import * as encoding from "lib0/encoding";
import { WebSocket } from "ws";
import { EDITOR_VERSION, PLAN_DOC_VERSION } from "#lib/doc/layout.ts";
import type { Attacked } from "./attacked.ts";
import { eventually } from "./eventually.ts";

export interface Flood {
  readonly user: "jonas" | "sam";
  readonly sockets?: number;
  /** How long the attack lasts, ms. */
  readonly ms?: number;
  /** The next frame of a socket; undefined when it has no more. */
  frame(socket: number, n: number): Uint8Array | undefined;
  /** Opens a socket again that the server has closed. */
  readonly again?: boolean;
}

/** How many frames were sent, and the codes with which sockets were closed. */
export interface Flooded {
  readonly sent: number;
  readonly codes: ReadonlySet<number>;
}

/** Frames that one socket may send before another has its turn, and what may wait in it (bytes). */
const AT_ONCE = 200;
const WAITING = 256 * 1024;

/** A socket without a document, so that attacking is cheap. */
export function bareSocket(server: Attacked, user: string): WebSocket {
  const address = `${server.url}/sync/plan/p?d=${PLAN_DOC_VERSION}&e=${EDITOR_VERSION}`;
  const ws = new WebSocket(address, { headers: { cookie: `session=${server.sessions[user]}` } });
  ws.on("error", () => undefined);
  return ws;
}

export async function flood(server: Attacked, { user, sockets = 1, ms = 700, frame, again }: Flood): Promise<Flooded> {
  const codes = new Set<number>();
  let sent = 0;
  const open = () => {
    const ws = bareSocket(server, user);
    ws.on("close", (code) => codes.add(code));
    return { ws, n: 0 };
  };
  const all = Array.from({ length: sockets }, open);
  await eventually("the sockets open", () => all.every(({ ws }) => ws.readyState !== WebSocket.CONNECTING), 20_000);
  const until = performance.now() + ms;
  while (performance.now() < until) {
    for (const [index, one] of all.entries()) {
      if (again && one.ws.readyState === WebSocket.CLOSED) all[index] = open();
      for (let i = 0; i < AT_ONCE && one.ws.readyState === WebSocket.OPEN && one.ws.bufferedAmount < WAITING; i++) {
        const next = frame(index, one.n++);
        if (!next) break;
        one.ws.send(next);
        sent++;
      }
    }
    await new Promise((done) => setImmediate(done));
  }
  for (const { ws } of all) ws.terminate();
  return { sent, codes };
}

export function syncFrame(kind: 0 | 1 | 2, body: Uint8Array): Uint8Array {
  const out = encoding.createEncoder();
  encoding.writeVarUint(out, 0);
  encoding.writeVarUint(out, kind);
  encoding.writeVarUint8Array(out, body);
  return encoding.toUint8Array(out);
}
/** Asks for the whole document. */
export const ASK_ALL = syncFrame(0, new Uint8Array([0]));
/** Asks who is there. */
export const ASK_WHO = new Uint8Array([3]);

export function presenceFrame(entries: readonly { clientId: number; clock: number; state: string }[]): Uint8Array {
  const body = encoding.createEncoder();
  encoding.writeVarUint(body, entries.length);
  for (const { clientId, clock, state } of entries) {
    encoding.writeVarUint(body, clientId);
    encoding.writeVarUint(body, clock);
    encoding.writeVarString(body, state);
  }
  const out = encoding.createEncoder();
  encoding.writeVarUint(out, 1);
  encoding.writeVarUint8Array(out, encoding.toUint8Array(body));
  return encoding.toUint8Array(out);
}

/** Items of one client from a given clock on, byte by byte, as a separate update. */
export function itemsUpdate(
  from: { readonly client: number; readonly clock: number; readonly count: number },
  write: (out: encoding.Encoder, n: number) => void,
): Uint8Array {
  const out = encoding.createEncoder();
  for (const number of [1, from.count, from.client, from.clock]) encoding.writeVarUint(out, number);
  for (let n = 0; n < from.count; n++) write(out, n);
  encoding.writeVarUint(out, 0);
  return encoding.toUint8Array(out);
}

/** One letter of a client at the front of a text: each is a separate struct, since those never merge. */
export function writeLetter(out: encoding.Encoder, at: { client: number; clock: number; text: string }): void {
  encoding.writeUint8(out, at.clock === 0 ? 4 : 4 | 0x40);
  encoding.writeVarUint(out, at.clock === 0 ? 1 : at.client);
  if (at.clock === 0) encoding.writeVarString(out, at.text);
  else encoding.writeVarUint(out, at.clock - 1);
  encoding.writeVarString(out, "x");
}

export const letterFrame = (client: number, clock: number, text: string): Uint8Array =>
  syncFrame(
    2,
    itemsUpdate({ client, clock, count: 1 }, (out) => writeLetter(out, { client, clock, text })),
  );
