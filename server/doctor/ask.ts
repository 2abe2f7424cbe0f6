/** How the doctor reaches the studio: over the public address as anybody would, with an end to its patience. */
import { WebSocket } from "ws";
import { ADDRESS_PATH, type AddressAnswer, readAddressAnswer } from "#lib/protocol/address.ts";

const PATIENCE_MS = 5_000;

export type AddressReply =
  | { readonly kind: "answer"; readonly answer: AddressAnswer; readonly date: string | null; readonly askedAt: number }
  | { readonly kind: "redirect"; readonly to: string }
  /** Something answers that is not this program. */
  | { readonly kind: "other"; readonly status: number }
  | { readonly kind: "nothing"; readonly why: string };

/** Asks the server at `origin` which one it is. Never throws. */
export async function requestAddress(
  origin: string,
  headers: Readonly<Record<string, string>> = {},
): Promise<AddressReply> {
  const askedAt = Date.now();
  try {
    const signal = AbortSignal.timeout(PATIENCE_MS);
    const response = await fetch(`${origin}${ADDRESS_PATH}`, { redirect: "manual", headers, signal });
    const to = response.headers.get("location");
    if (to !== null && URL.canParse(to, origin)) return { kind: "redirect", to: new URL(to, origin).origin };
    const answer = readAddressAnswer(await response.json().catch(() => null));
    if (!answer) return { kind: "other", status: response.status };
    return { kind: "answer", answer, date: response.headers.get("date"), askedAt: (askedAt + Date.now()) / 2 };
  } catch (error) {
    return { kind: "nothing", why: reason(error) };
  }
}

export type SocketEnd =
  | { readonly kind: "opened" }
  /** `to`: the origin that the answer sends to, where it does. */
  | { readonly kind: "status"; readonly status: number; readonly to: string | undefined }
  | { readonly kind: "failed"; readonly why: string };

/**
 * Opens a socket as a page at `origin` would. The server takes in whoever asks and then says who may stay, so an
 * opening tells all that has to be known.
 */
export function openSocket(origin: string): Promise<SocketEnd> {
  return new Promise((resolve) => {
    const address = `${origin.replace(/^http/, "ws")}/sync/plan/doctor`;
    const ws = new WebSocket(address, { headers: { origin }, handshakeTimeout: PATIENCE_MS });
    const end = (how: SocketEnd) => {
      resolve(how);
      ws.terminate();
    };
    ws.on("open", () => end({ kind: "opened" }));
    ws.on("unexpected-response", (_request, { statusCode = 0, headers }) => {
      const to = URL.canParse(headers.location ?? "") ? new URL(headers.location ?? "").origin : undefined;
      end({ kind: "status", status: statusCode, to });
    });
    ws.on("error", (error) => end({ kind: "failed", why: reason(error) }));
  });
}

const WORDS: Readonly<Record<string, string>> = {
  ECONNREFUSED: "nothing listens there",
  ENOTFOUND: "there is no such name",
  EAI_AGAIN: "the name cannot be looked up now",
  EHOSTUNREACH: "there is no way there from this machine",
  ETIMEDOUT: "no answer came in time",
  UND_ERR_CONNECT_TIMEOUT: "no answer came in time",
  CERT_HAS_EXPIRED: "its certificate has run out",
  DEPTH_ZERO_SELF_SIGNED_CERT: "its certificate is signed by nobody",
  SELF_SIGNED_CERT_IN_CHAIN: "its certificate is signed by nobody whom this machine trusts",
  UNABLE_TO_VERIFY_LEAF_SIGNATURE: "its certificate lacks the ones between it and its root",
  ERR_TLS_CERT_ALTNAME_INVALID: "its certificate is for another name",
};

/** The innermost reason, in words where it is a usual one. */
function reason(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  if (error.name === "TimeoutError") return "no answer came in time";
  if (error.cause instanceof Error) return reason(error.cause);
  const code = "code" in error ? String(error.code) : "";
  return WORDS[code] ?? (error.message || code);
}
