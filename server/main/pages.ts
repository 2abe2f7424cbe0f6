/** The pages: Next, inside this process, behind our own HTTP server. */
import { createServer } from "node:http";
import next from "next";
import type { Env } from "#server/base/env.ts";
import type { ServeSetup } from "#server/http/serve.ts";

export interface Pages {
  start(): Promise<void>;
  getRequestHandler(): ServeSetup["handle"];
  upgrade: ServeSetup["upgrade"];
  close(): Promise<void>;
}

/**
 * Next gets a server that never listens; in development it is handed the upgrades of its hot reload.
 * `projectDir`: the folder that holds `app/`.
 */
export function createPages(env: Env, projectDir: string): Pages {
  const dev = env.mode === "dev";
  const dummy = createServer();
  const pages = next({ dev, dir: projectDir, hostname: env.host, port: env.port, httpServer: dummy });
  return {
    start: pages.prepare.bind(pages),
    getRequestHandler: () => pages.getRequestHandler(),
    upgrade: (request, socket, head) => dev && isHotReload(request.url) && dummy.emit("upgrade", request, socket, head),
    close: () => pages.close(),
  };
}

const isHotReload = (url = "") => /^\/_next\/(hmr|webpack-hmr)(\?|$)/.test(url);
