/** Brings moves from a plan file into the library, for leads and managers. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { can } from "#lib/policy/can.ts";
import { requirePerson } from "../../_shell/person.ts";
import { Shell } from "../../_shell/shell.tsx";
import { BringMoves } from "./bring-moves.tsx";

export const metadata: Metadata = { title: "Bring moves" };

export default async function BringPage() {
  const visit = await requirePerson("/library/bring");
  if (!can(visit.who.actor, "library.write")) notFound();
  return (
    <Shell visit={visit} section="library">
      <Link className="link-line" href="/library">
        Library
      </Link>
      <h1>Bring moves from a plan file</h1>
      <p>
        A plan file contains the moves it uses. You can add those that are not in the library yet. Where the library has
        a move with the same id, you see what differs before anything changes.
      </p>
      <BringMoves />
    </Shell>
  );
}
