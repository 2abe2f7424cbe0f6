/** How the doctor reaches the studio: over its public address, like anybody else, with a timeout. */
import { WebSocket } from "ws";
import { BUILD_HEADER } from "#lib/client/newer-build.ts";
import { ADDRESS_PATH, type AddressAnswer, readAddressAnswer } from "#lib/protocol/address.ts";

const TIMEOUT_MS = 5_000;

export type AddressReply =
  | {
      readonly kind: "answer";
      readonly answer: AddressAnswer;
      readonly date: string | null;
      readonly askedAt: number;
      /** The build that the server runs. */
      readonly build: string | null;
    }
  | { readonly kind: "redirect"; readonly to: string }
  /** Something else than Springline answers. */
  | { readonly kind: "other"; readonly status: number }
  | { readonly kind: "nothing"; readonly why: string };

/** Asks the server at `origin` for its identity. Never throws. */
export async function requestAddress(
  origin: string,
  headers: Readonly<Record<string, string>> = {},
): Promise<AddressReply> {
  const askedAt = Date.now();
  try {
    const signal = AbortSignal.timeout(TIMEOUT_MS);
    const response = await fetch(`${origin}${ADDRESS_PATH}`, { redirect: "manual", headers, signal });
    const to = response.headers.get("location");
    if (to !== null && URL.canParse(to, origin)) return { kind: "redirect", to: new URL(to, origin).origin };
    const answer = readAddressAnswer(await response.json().catch(() => null));
    if (!answer) return { kind: "other", status: response.status };
    const [date, build] = ["date", BUILD_HEADER].map((name) => response.headers.get(name));
    return { kind: "answer", answer, date: date ?? null, askedAt: (askedAt + Date.now()) / 2, build: build ?? null };
  } catch (error) {
    return { kind: "nothing", why: reason(error) };
  }
}

/** Null when metrics of a Springline are there; else why not. Never throws. */
export async function askMetrics(address: string): Promise<string | null> {
  try {
    const response = await fetch(address, { signal: AbortSignal.timeout(TIMEOUT_MS) });
    return (await response.text()).includes("springline_build_info") ? null : `status ${response.status}`;
  } catch (error) {
    return reason(error);
  }
}

export type SocketEnd =
  | { readonly kind: "opened" }
  /** `to`: the origin of a redirect, if the answer is one. */
  | { readonly kind: "status"; readonly status: number; readonly to: string | undefined }
  | { readonly kind: "failed"; readonly why: string };

/**
 * Opens a socket as a page at `origin` would. The server accepts every socket first and closes it later if it must, so
 * opening is all that has to be tested.
 */
export function openSocket(origin: string): Promise<SocketEnd> {
  return new Promise((resolve) => {
    const address = `${origin.replace(/^http/, "ws")}/sync/plan/doctor`;
    const ws = new WebSocket(address, { headers: { origin }, handshakeTimeout: TIMEOUT_MS });
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
  ECONNREFUSED: "no server is listening there",
  ENOTFOUND: "the name does not exist",
  EAI_AGAIN: "the name cannot be looked up at the moment",
  EHOSTUNREACH: "it cannot be reached from this machine",
  ETIMEDOUT: "no answer came in time",
  UND_ERR_CONNECT_TIMEOUT: "no answer came in time",
  CERT_HAS_EXPIRED: "its certificate has expired",
  DEPTH_ZERO_SELF_SIGNED_CERT: "its certificate is self-signed",
  SELF_SIGNED_CERT_IN_CHAIN: "its certificate is not signed by anyone that this machine trusts",
  UNABLE_TO_VERIFY_LEAF_SIGNATURE: "its intermediate certificates are missing",
  ERR_TLS_CERT_ALTNAME_INVALID: "its certificate is for another name",
};

/** The innermost cause, in plain words if it is a common one. */
function reason(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  if (error.name === "TimeoutError") return "no answer came in time";
  if (error.cause instanceof Error) return reason(error.cause);
  const code = "code" in error ? String(error.code) : "";
  return WORDS[code] ?? (error.message || code);
}
