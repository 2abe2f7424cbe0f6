import { floorPage, partsOfBuild } from "#server/devices/floor-page.ts";
import { springline } from "#server/springline.ts";

export const dynamic = "force-dynamic";

export function GET(): Response {
  return new Response(floorPage(partsOfBuild(springline().env)), {
    headers: { "content-type": "text/html; charset=utf-8", "cache-control": "no-cache" },
  });
}
