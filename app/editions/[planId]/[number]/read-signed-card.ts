/** A signed edition for printing. People who are not signed in are sent to sign in, and come back. */

import { headers } from "next/headers";
import { redirect } from "next/navigation";
import { ok } from "#server/base/result.ts";
import { actorFromHeaders } from "#server/context/actor-from-headers.ts";
import { springline } from "#server/context/springline.ts";
import { readSignedEdition } from "#server/editions/editions.ts";
import { personFormats } from "#server/formats/formats.ts";

export interface SheetProps {
  readonly params: Promise<{ planId: string; number: string }>;
}

/** `sheet`: the last part of its address. */
export async function readSignedCard({ params }: SheetProps, sheet: "print" | "crew") {
  const { planId, number } = await params;
  const who = await actorFromHeaders(await headers());
  if (!who) redirect(`/sign-in?to=${encodeURIComponent(`/editions/${planId}/${number}/${sheet}`)}`);
  const app = springline();
  const found = readSignedEdition(app, who.actor, planId, Number(number));
  return found.ok ? ok({ ...found.value, formats: personFormats(app, who.actor.id) }) : found;
}

/** For the page's own title, which is also the name of a file made of it. */
export async function titleOf({ params }: SheetProps, what: string): Promise<string> {
  const { planId, number } = await params;
  const who = await actorFromHeaders(await headers());
  const found = readSignedEdition(springline(), who?.actor ?? null, planId, Number(number));
  return found.ok ? `${found.value.card.card.edition.title}, edition ${found.value.number}${what}` : "No such edition";
}
