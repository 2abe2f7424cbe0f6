/** Notes how a request was answered, for the metrics and the access log, and names each request in the log. */
import { randomBytes } from "node:crypto";
import type { IncomingMessage, ServerResponse } from "node:http";
import type { Duplex } from "node:stream";
import { refusedUpgrade } from "#server/sockets/close-socket.ts";
import { loggedPath } from "./logged-path.ts";

export interface Answered {
  /** Stands in the lines of the log that are about this request, and in its answer as `x-request-id`. */
  readonly id: string;
  readonly method: string;
  /** Without query, and without what opens a door. */
  readonly path: string;
  /** 0 when whoever asked had gone before the answer was complete; 101 for a socket that was opened. */
  readonly status: number;
  /** Of a socket: how long it was open. */
  readonly ms: number;
  /** Sent, headers included. */
  readonly bytes: number;
}
export type HearAnswered = (request: Answered) => void;

/** Our own header: the id of the request, for whoever handles it. */
export const REQUEST_ID_HEADER = "x-springline-request";

const RUN = randomBytes(4).toString("hex");
let count = 0;
/** Unlike any other of this run, and unlikely to be one of another. */
export const newRequestId = (): string => `${RUN}-${(count++).toString(36)}`;

/** Calls `hear` once the answer is complete, or its asker has gone. */
export function whenAnswered(request: IncomingMessage, response: ServerResponse, id: string, hear: HearAnswered): void {
  const from = performance.now();
  const { socket, method = "" } = request;
  const path = loggedPath(request.url ?? "");
  const before = socket.bytesWritten;
  response.once("close", () => {
    const status = response.writableFinished ? response.statusCode : 0;
    hear({ id, method, path, status, ms: performance.now() - from, bytes: socket.bytesWritten - before });
  });
}

/** Calls `hear` once a socket, or the refusal of one, has ended. */
export function whenSocketEnds(request: IncomingMessage, socket: Duplex, id: string, hear: HearAnswered): void {
  const from = performance.now();
  const { method = "" } = request;
  const path = loggedPath(request.url ?? "");
  const before = request.socket.bytesWritten;
  socket.once("close", () => {
    const status = refusedUpgrade(socket) ?? 101;
    hear({ id, method, path, status, ms: performance.now() - from, bytes: request.socket.bytesWritten - before });
  });
}
