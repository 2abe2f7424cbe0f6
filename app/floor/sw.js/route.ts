import { springline } from "#server/context/springline.ts";
import { floorWorker } from "#server/devices/floor-worker.ts";

export const dynamic = "force-dynamic";

/** None in development: parts are not named by their content then, and a kept one would be stale. */
export function GET(): Response {
  const { env } = springline();
  if (env.mode === "dev") return new Response("No worker in development.", { status: 404 });
  return new Response(floorWorker(env.build ?? "dev"), {
    headers: {
      "content-type": "text/javascript; charset=utf-8",
      "cache-control": "no-cache",
      "service-worker-allowed": "/floor",
    },
  });
}
