/** Signing in. Somebody who already is goes on; a studio that does not exist yet begins with its first run. */

import type { Metadata } from "next";
import { headers } from "next/headers";
import { redirect } from "next/navigation";
import { actorFromHeaders } from "#server/context/actor-from-headers.ts";
import { springline } from "#server/context/springline.ts";
import { isMailSetUp } from "#server/mail/mail-settings.ts";
import { presentStudio } from "#server/people/first-run.ts";
import { Door } from "../_shell/door.tsx";
import { safePath } from "../_shell/person.ts";
import { SignInForm } from "./sign-in-form.tsx";

export const metadata: Metadata = { title: "Sign in" };

export default async function SignInPage({
  searchParams,
}: {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}) {
  const app = springline();
  const studio = presentStudio(app);
  if (!studio) redirect("/first-run");
  const to = safePath((await searchParams).to);
  if (await actorFromHeaders(await headers(), app)) redirect(to);
  return (
    <Door title="Sign in" lead={studio.town ? `${studio.name}, ${studio.town}` : studio.name}>
      <SignInForm to={to} byMail={isMailSetUp(app)} />
    </Door>
  );
}
