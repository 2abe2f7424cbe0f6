/**
 * The one way in which a page talks to the server: sends JSON, gives back the answer or a sentence to show. Never throws,
 * so a form keeps what was typed until the server says that it has it. Client only.
 */
import * as z from "zod/mini";
import { BUILD_HEADER, newerBuild } from "#lib/client/newer-build.ts";

export type Method = "GET" | "POST" | "PATCH" | "DELETE" | "PUT";

export interface RefusedRequest {
  readonly ok: false;
  /** Of the HTTP answer; 0 where there was none. */
  readonly status: number;
  /** The server's own, or "no-answer", "unreadable" (an answer of another shape than asked for), "unknown". */
  readonly code: string;
  readonly message: string;
  readonly details?: unknown;
}
export type Sent<T = unknown> = { readonly ok: true; readonly value: T } | RefusedRequest;

/** How it is sent, where that differs from a page of somebody signed in. */
export interface SendOptions<T> extends Pick<RequestInit, "credentials" | "signal"> {
  /** What the answer has to be. Without it, `T` is only what the route promises. */
  readonly reads?: z.ZodMiniType<T> | undefined;
  readonly headers?: Readonly<Record<string, string>>;
}

const NO_ANSWER: RefusedRequest = {
  ok: false,
  status: 0,
  code: "no-answer",
  message: "The server did not answer. Nothing you typed is lost: try again when the network is back.",
};
const UNREADABLE = "The server’s answer could not be read. Reload the page and try again.";

const errorSchema = z.object({
  error: z.object({ code: z.string(), message: z.string().check(z.minLength(1)), details: z.optional(z.unknown()) }),
});

/** `body` is sent as JSON; a Blob, which holds JSON already, as it is. */
export async function send<T = unknown>(
  method: Method,
  url: string,
  body?: unknown,
  { reads, headers, ...rest }: SendOptions<T> = {},
): Promise<Sent<T>> {
  try {
    const response = await fetch(url, {
      method,
      headers: { ...(body === undefined ? {} : { "content-type": "application/json" }), ...headers },
      cache: "no-store",
      ...(body === undefined ? {} : { body: body instanceof Blob ? body : JSON.stringify(body) }),
      ...rest,
    });
    newerBuild.heard(response.headers.get(BUILD_HEADER));
    return answerOf(response, await response.text(), reads);
  } catch {
    return NO_ANSWER;
  }
}

function answerOf<T>({ ok, status }: Response, text: string, reads: z.ZodMiniType<T> | undefined): Sent<T> {
  const json = parsed(text);
  if (ok) return json === undefined ? NO_ANSWER : readAs(status, json, reads);
  const error = errorSchema.safeParse(json);
  if (error.success) return { ok: false, status, ...error.data.error };
  const message = `The server answered with an error (${status}). Nothing you typed is lost: try again in a moment.`;
  return { ok: false, status, code: "unknown", message };
}

function readAs<T>(status: number, json: unknown, reads: z.ZodMiniType<T> | undefined): Sent<T> {
  if (!reads) return { ok: true, value: json as T };
  const read = reads.safeParse(json);
  return read.success ? { ok: true, value: read.data } : { ok: false, status, code: "unreadable", message: UNREADABLE };
}

/** Null for an empty answer; undefined for one that is not JSON, which comes from a proxy or a hotel’s sign-in page. */
function parsed(text: string): unknown {
  if (text === "") return null;
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
