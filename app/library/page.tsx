/** The studio's moves, to search and to open. The filters are in the address, so that coming back keeps them. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { SAFETY_NOTE } from "#lib/card/cautions.ts";
import { filterFromQuery } from "#lib/library/filter-query.ts";
import { knownSprings } from "#lib/library/known-springs.ts";
import { can } from "#lib/policy/can.ts";
import { readLibrary } from "#server/library/library.ts";
import { listRooms } from "#server/rooms/manage-rooms.ts";
import { requirePerson } from "../_shell/person.ts";
import { Shell } from "../_shell/shell.tsx";
import { LibraryBrowser } from "./library-browser.tsx";

export const metadata: Metadata = { title: "Library" };

interface PageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export default async function LibraryPage({ searchParams }: PageProps) {
  const visit = await requirePerson("/library");
  const { app, who } = visit;
  const library = readLibrary(app, who.actor);
  if (!library.ok) notFound();
  const query = await searchParams;
  const read = (key: string) => {
    const value = query[key];
    return Array.isArray(value) ? value[0] : value;
  };
  const rooms = listRooms(app, who.actor);
  return (
    <Shell visit={visit} section="library">
      <div className="spread">
        <h1>Library</h1>
        {can(who.actor, "library.write") ? (
          <div className="acts">
            <Link className="button" href="/library/bring">
              Bring moves from a plan file
            </Link>
            <Link className="button button-strong" href="/library/new">
              Add a move
            </Link>
          </div>
        ) : null}
      </div>
      <LibraryBrowser
        moves={library.value.moves}
        archived={library.value.archived ?? []}
        springs={knownSprings(rooms.ok ? rooms.value : [])}
        start={{ filter: filterFromQuery(read), out: read("out") === "1" }}
        note={SAFETY_NOTE}
        mayAdd={can(who.actor, "library.write")}
      />
    </Shell>
  );
}
