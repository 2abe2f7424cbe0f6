/** Somebody has opened a place: what they were told of it is seen. Server only. */
import { headers } from "next/headers";
import type { Springline } from "#server/context/springline.ts";
import { seeNoticesOf } from "#server/notices/list-notices.ts";

type Seen = Parameters<typeof seeNoticesOf>;

/** Not when a browser only fetches the page ahead of a press. */
export async function seePlace(app: Springline, person: Seen[1], where: Seen[2]): Promise<void> {
  if ((await headers()).has("next-router-prefetch")) return;
  seeNoticesOf(app, person, where);
}
