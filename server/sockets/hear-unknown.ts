/** Listens to a socket whose holder is not known yet: bounded in bytes and in time. Traffic never extends the time. */
import type { Duplex } from "node:stream";
import type { RawData, WebSocket } from "ws";

export interface UnknownSocket {
  readonly ws: WebSocket;
  /** Bytes are counted here, since half a frame takes memory too. */
  readonly socket: Duplex;
  readonly headBytes: number;
}

export interface UnknownLimits {
  readonly strangerBytes: number;
  readonly strangerMs: number;
}

export interface UnknownHandlers {
  message(data: RawData, isBinary: boolean): void;
  tooMuch(): void;
  tooSlow(): void;
  /** The socket closed by itself. */
  gone(): void;
}

/** Returns what stops listening; it may be called more than once. */
export function hearUnknown(
  { ws, socket, headBytes }: UnknownSocket,
  limits: UnknownLimits,
  handlers: UnknownHandlers,
): () => void {
  let bytes = headBytes;
  const onData = (chunk: Buffer) => {
    bytes += chunk.length;
    if (bytes > limits.strangerBytes) handlers.tooMuch();
  };
  const onMessage = (data: RawData, isBinary: boolean) => handlers.message(data, isBinary);
  const onClose = () => handlers.gone();
  const timer = setTimeout(() => handlers.tooSlow(), limits.strangerMs);
  socket.on("data", onData);
  ws.on("message", onMessage);
  ws.on("close", onClose);
  return () => {
    clearTimeout(timer);
    socket.off("data", onData);
    ws.off("message", onMessage);
    ws.off("close", onClose);
  };
}
