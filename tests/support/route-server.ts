/** Route handlers behind the program's real gate, on their own port, for requests sent as raw bytes. */
import type { IncomingMessage, ServerResponse } from "node:http";
import { Readable } from "node:stream";
import type { Env } from "#server/base/env.ts";
import { createLog, type Log } from "#server/base/log.ts";
import { createGate } from "#server/http/gate.ts";
import { type ServeSetup, type Serving, serve } from "#server/http/serve.ts";

export type RouteHandler = (request: Request) => Promise<Response> | Response;

export interface RouteServer {
  /** `http://127.0.0.1:<port>` */
  readonly url: string;
  readonly serving: Serving;
}

export interface RouteServerSetup {
  readonly env: Pick<Env, "mode" | "origin" | "trustProxy">;
  /** By method and path, e.g. "POST /api/first-run". */
  readonly routes: Readonly<Record<string, RouteHandler>>;
  readonly hasStudio?: () => boolean;
  readonly upgrade?: ServeSetup["upgrade"];
  /** Any free one when left out. */
  readonly port?: number;
  readonly answered?: ServeSetup["answered"];
  /** Silent when left out. */
  readonly log?: Log;
}

export async function startRoutes(setup: RouteServerSetup): Promise<RouteServer> {
  const env = { ...setup.env, host: "127.0.0.1", port: setup.port ?? 0 };
  const serving = await serve({
    env,
    log: setup.log ?? createLog("silent"),
    gate: createGate({ env, hasStudio: setup.hasStudio ?? (() => true) }),
    handle: (request, response) => answer(setup.routes, request, response),
    upgrade: setup.upgrade ?? (() => false),
    ...(setup.answered ? { answered: setup.answered } : {}),
  });
  return { url: `http://127.0.0.1:${serving.port}`, serving };
}

async function answer(
  routes: RouteServerSetup["routes"],
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const path = new URL(request.url ?? "/", "http://x").pathname;
  const route = routes[`${request.method} ${path}`];
  const said = route ? await route(asWebRequest(request)) : new Response(null, { status: 404 });
  response.statusCode = said.status;
  for (const [name, value] of said.headers) if (name !== "set-cookie") response.setHeader(name, value);
  const cookies = said.headers.getSetCookie();
  if (cookies.length > 0) response.setHeader("set-cookie", cookies);
  response.end(Buffer.from(await said.arrayBuffer()));
}

/** The body is read only when the handler reads it. */
function asWebRequest(request: IncomingMessage): Request {
  const headers = new Headers();
  for (const [name, value] of Object.entries(request.headers)) headers.set(name, String(value));
  const method = request.method ?? "GET";
  const reads = method !== "GET" && method !== "HEAD";
  const body = reads ? { body: Readable.toWeb(request) as ReadableStream, duplex: "half" as const } : {};
  return new Request(`http://localhost${request.url}`, { method, headers, ...body });
}
