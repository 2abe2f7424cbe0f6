/** A forgotten password, where the studio sends e-mail: asks for the address and mails a link. */
import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { springline } from "#server/context/springline.ts";
import { isMailSetUp } from "#server/mail/mail-settings.ts";
import { presentStudio } from "#server/people/first-run.ts";
import { Door } from "../../_shell/door.tsx";
import { ForgottenForm } from "./forgotten-form.tsx";

export const metadata: Metadata = { title: "Forgotten password" };

export default function ForgottenPage() {
  const app = springline();
  const studio = presentStudio(app);
  if (!studio) redirect("/first-run");
  if (!isMailSetUp(app)) redirect("/sign-in");
  return (
    <Door title="Forgotten password" lead={studio.name}>
      <ForgottenForm />
    </Door>
  );
}
