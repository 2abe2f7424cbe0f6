/** A real server with the program's entry points but not its pages: `/api/address`, `/api/health`, sockets, and one page. */
import { GET as address } from "#app/api/address/route.ts";
import { GET as health } from "#app/api/health/route.ts";
import { createLog } from "#server/base/log.ts";
import { setSpringline } from "#server/context/springline.ts";
import { createGate } from "#server/http/gate.ts";
import { type Serving, serve } from "#server/http/serve.ts";
import { attachSync } from "#server/sync/attach.ts";
import { openStudio, type PlanStudio } from "./plan-studio.ts";

export interface AddressServer {
  readonly port: number;
  readonly studio: PlanStudio;
  stop(): Promise<void>;
}

export interface AddressSetup {
  readonly origin: string;
  readonly trustProxy?: boolean;
  readonly port?: number;
  readonly secret?: string;
}

const ROUTES: Readonly<Record<string, (request: Request) => Promise<Response>>> = {
  "/api/address": address,
  "/api/health": health,
};

export async function startAddressServer(setup: AddressSetup): Promise<AddressServer> {
  const studio = openStudio({ clock: Date.now() });
  const { origin, trustProxy = false, port = 0 } = setup;
  const env = { ...studio.app.env, ...{ origin, trustProxy, port }, secret: setup.secret ?? studio.app.env.secret };
  setSpringline({ ...studio.app, env });
  const door = attachSync({ rooms: studio.rooms, isOriginAllowed: (from) => from === origin });
  const serving: Serving = await serve({
    env,
    log: createLog("silent"),
    gate: createGate({ env, hasStudio: () => true }),
    async handle(request, response) {
      const route = ROUTES[request.url ?? ""];
      if (!route) return response.end("a page");
      const headers = new Headers(Object.entries(request.headers).map(([name, value]) => [name, String(value)]));
      const answer = await route(new Request(new URL(request.url ?? "/", origin), { headers }));
      return response.writeHead(answer.status, { "content-type": "application/json" }).end(await answer.text());
    },
    upgrade: (request, socket, head) => door.handleUpgrade(request, socket, head),
  });
  return {
    port: serving.port,
    studio,
    async stop() {
      door.detach();
      await serving.close(0);
      setSpringline(undefined);
      await studio.stop();
    },
  };
}
