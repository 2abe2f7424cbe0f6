/** Who opens a page: asked by every page of the workspace before it shows anything. Server only. */

import { headers } from "next/headers";
import { redirect } from "next/navigation";
import type { Studio } from "#db/repos/studio-repo.ts";
import type { Formats } from "#lib/formats/formats.ts";
import type { SignedIn } from "#server/auth/actor.ts";
import { actorFromHeaders } from "#server/context/actor-from-headers.ts";
import { type Springline, springline } from "#server/context/springline.ts";
import { personFormats, studioFormats } from "#server/formats/formats.ts";
import { countUnseen } from "#server/notices/list-notices.ts";
import { presentStudio } from "#server/people/first-run.ts";

export interface Visit {
  readonly app: Springline;
  readonly who: SignedIn;
  readonly studio: Studio;
  /** How they are shown days, times, weeks, forces and lengths. */
  readonly formats: Formats;
  /** How many notices they have not seen. */
  readonly unseen: number;
}

/** The signed-in person; anybody else is sent to sign in (and back to `path`), or to the first run of a new studio. */
export async function requirePerson(path: string): Promise<Visit> {
  if (!presentStudio(springline())) redirect("/first-run");
  return (await presentPerson()) ?? redirect(`/sign-in?to=${encodeURIComponent(path)}`);
}

/** Who is signed in, for pages that anybody may read; null for nobody, and where there is no studio yet. */
export async function presentPerson(): Promise<Visit | null> {
  const app = springline();
  const studio = presentStudio(app);
  const who = studio && (await actorFromHeaders(await headers(), app));
  if (!studio || !who) return null;
  const formats = personFormats(app, who.actor.id);
  return { app, who, studio, formats, unseen: countUnseen(app, who.actor) };
}

/** The same formats for the title of a page, which is asked for apart; the studio's for who is not signed in. */
export async function readerFormats(): Promise<Formats> {
  const app = springline();
  const who = await actorFromHeaders(await headers(), app);
  return who ? personFormats(app, who.actor.id) : studioFormats(app);
}

/** A path of this program to go on to after signing in; anything else (another site, a loop) leads to the desk. */
export function safePath(to: string | string[] | undefined): string {
  const path = typeof to === "string" ? to : "";
  const ours = /^\/[A-Za-z0-9][A-Za-z0-9/_.?=&%~-]*$/.test(path) && !path.startsWith("/sign-in");
  return ours ? path : "/desk";
}
