/** A new password by a reset link: says whose it is, then asks for the password. */
import type { Metadata } from "next";
import Link from "next/link";
import { springline } from "#server/context/springline.ts";
import { readResetLink } from "#server/people/reset-password.ts";
import { Door } from "../../_shell/door.tsx";
import { ResetForm } from "./reset-form.tsx";

export const metadata: Metadata = { title: "New password", referrer: "no-referrer" };

export default async function ResetPage({ params }: { readonly params: Promise<{ readonly token: string }> }) {
  const { token } = await params;
  const reset = readResetLink(springline(), token);
  if (!reset.ok) {
    return (
      <Door title="This link does not work" lead={reset.error.message}>
        <Link className="button" href="/sign-in">
          Sign in
        </Link>
      </Door>
    );
  }
  const { studio, name, email } = reset.value;
  return (
    <Door title="Choose a new password" lead={`${name}, ${studio}`}>
      <ResetForm token={token} email={email} />
    </Door>
  );
}
