import { springline } from "#server/context/springline.ts";
import { readPart } from "#server/devices/floor-page.ts";

export const dynamic = "force-dynamic";

/** Scripts, styles and fonts of the floor, named by their content, so browsers may keep them for a year. */
export async function GET(_request: Request, { params }: { params: Promise<{ name: string }> }): Promise<Response> {
  const { env } = springline();
  const part = readPart(env, (await params).name);
  if (!part) return new Response("This part of the page does not exist. Reload the page.", { status: 404 });
  return new Response(part.bytes, {
    headers: { "content-type": part.type, "cache-control": "public, max-age=31536000, immutable" },
  });
}
