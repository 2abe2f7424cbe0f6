/** Answers `GET /metrics` on a port of its own, so that no proxy hands it to the world by accident. */
import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import type { Registry } from "prom-client";
import type { MetricsPort } from "#server/base/env.ts";
import type { Log } from "#server/base/log.ts";
import { listen } from "#server/http/listen.ts";

export interface MetricsServing {
  readonly port: number;
  close(): void;
}

/** Throws CannotListen. */
export async function serveMetrics(
  { host, port }: MetricsPort,
  { registry, log }: { readonly registry: Registry; readonly log: Log },
): Promise<MetricsServing> {
  const server = createServer((request, response) => {
    answer(registry, request, response).catch((err: unknown) => {
      log.error({ err }, "the metrics could not be read");
      if (!response.headersSent) response.writeHead(500);
      response.end();
    });
  });
  const taken = await listen(server, {
    host,
    port,
    names: { host: "SPRINGLINE_METRICS_HOST", port: "SPRINGLINE_METRICS_PORT" },
  });
  server.on("error", (err) => log.error({ err }, "metrics server"));
  // Not a reason for the process to live on.
  server.unref();
  return {
    port: taken,
    close() {
      server.close();
      server.closeAllConnections();
    },
  };
}

async function answer(registry: Registry, { method, url }: IncomingMessage, response: ServerResponse): Promise<void> {
  if (method !== "GET" || url?.split("?")[0] !== "/metrics") {
    response.writeHead(404, { "content-type": "text/plain" }).end("Metrics are at GET /metrics.\n");
    return;
  }
  const text = await registry.metrics();
  response.writeHead(200, { "content-type": registry.contentType, "cache-control": "no-store" }).end(text);
}
