import { springline } from "#server/context/springline.ts";
import { floorPage, partsOfBuild } from "#server/devices/floor-page.ts";

export const dynamic = "force-dynamic";

export function GET(): Response {
  const { env } = springline();
  return new Response(floorPage(partsOfBuild(env), env.build ?? null), {
    headers: { "content-type": "text/html; charset=utf-8", "cache-control": "no-cache" },
  });
}
