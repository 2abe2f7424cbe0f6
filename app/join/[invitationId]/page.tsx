/** Joining by an invitation link: says which studio it is and which roles one will have, then asks for name and password. */
import type { Metadata } from "next";
import Link from "next/link";
import { springline } from "#server/context/springline.ts";
import { readJoin } from "#server/people/join.ts";
import { ROLE_WORDS } from "../../_parts/role-words.ts";
import { Door } from "../../_shell/door.tsx";
import { JoinForm } from "./join-form.tsx";

export const metadata: Metadata = { title: "Join", referrer: "no-referrer" };

export default async function JoinPage({ params }: { readonly params: Promise<{ readonly invitationId: string }> }) {
  const { invitationId } = await params;
  const join = readJoin(springline(), invitationId);
  if (!join.ok) {
    return (
      <Door title="This link does not work" lead={join.error.message}>
        <Link className="button" href="/sign-in">
          Sign in
        </Link>
      </Door>
    );
  }
  const { studio, email, name, roles } = join.value;
  return (
    <Door title={`Join ${studio}`} lead={`You join as ${roles.map((role) => ROLE_WORDS[role].name).join(" and ")}.`}>
      <JoinForm invitationId={invitationId} email={email} name={name ?? ""} />
    </Door>
  );
}
