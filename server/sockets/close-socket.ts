/** How a socket is refused before the handshake, and closed after it. */
import type { Duplex } from "node:stream";
import type { WebSocket } from "ws";

const refused = new WeakMap<Duplex, number>();
/** The status that an upgrade was refused with; undefined for one that was not. */
export const refusedUpgrade = (socket: Duplex): number | undefined => refused.get(socket);

/** Answers an upgrade request with a bare status line, such as `403 Forbidden`, and ends the socket. */
export function refuseUpgrade(socket: Duplex, status: string, headers = ""): void {
  refused.set(socket, Number.parseInt(status, 10));
  socket.end(`HTTP/1.1 ${status}\r\n${headers}Connection: close\r\nContent-Length: 0\r\n\r\n`);
}

/** Closes with `code` and `reason`, and cuts off a socket that does not answer within `closeMs`. */
export function endSocket(ws: WebSocket, code: number, reason: string, closeMs: number): void {
  ws.close(code, reason);
  const timer = setTimeout(() => ws.terminate(), closeMs);
  timer.unref();
  ws.once("close", () => clearTimeout(timer));
}

/** `ws` delivers one Buffer per message unless configured otherwise. */
export function bytesOf(data: Buffer | ArrayBuffer | Buffer[]): Uint8Array {
  if (Array.isArray(data)) return Buffer.concat(data);
  return data instanceof ArrayBuffer ? new Uint8Array(data) : data;
}
