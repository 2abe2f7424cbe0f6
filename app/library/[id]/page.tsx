/** One move: everything about it, where it is used, what happened to it. */
import type { Metadata } from "next";
import { headers } from "next/headers";
import Link from "next/link";
import { notFound } from "next/navigation";
import { CAUTION_NOTICE } from "#lib/cautions/expected.ts";
import { moveDoubts } from "#lib/library/doubts.ts";
import { filterFromQuery, filterToQuery } from "#lib/library/filter-query.ts";
import { knownSprings } from "#lib/library/known-springs.ts";
import { can } from "#lib/policy/can.ts";
import { actorFromHeaders } from "#server/auth/actor.ts";
import { readMoveDetail } from "#server/library/read-move.ts";
import { whereUsed } from "#server/library/where-used.ts";
import { listRooms } from "#server/rooms/manage-rooms.ts";
import { springline } from "#server/springline.ts";
import { requirePerson } from "../../_shell/person.ts";
import { Shell } from "../../_shell/shell.tsx";
import { DoubtList } from "../_move/doubt-list.tsx";
import styles from "../_move/move.module.css";
import { MoveActs } from "../_move/move-acts.tsx";
import { MoveFacts } from "../_move/move-facts.tsx";
import { RecordList } from "../_move/record-list.tsx";
import { WhereUsedList } from "../_move/where-used.tsx";

interface PageProps {
  readonly params: Promise<{ id: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  const who = await actorFromHeaders(await headers());
  const found = readMoveDetail(springline(), who?.actor ?? null, (await params).id);
  return { title: found.ok ? found.value.move.name : "No such move" };
}

export default async function MovePage({ params, searchParams }: PageProps) {
  const { id } = await params;
  const visit = await requirePerson(`/library/${id}`);
  const { app, who } = visit;
  const found = readMoveDetail(app, who.actor, id);
  const used = await whereUsed(app, who.actor, id);
  if (!found.ok || !used.ok) notFound();
  const { move, archivedAt, updatedAt, record } = found.value;
  const known = listRooms(app, who.actor);
  const rooms = known.ok ? known.value : [];
  const writes = can(who.actor, "library.write");
  const doubts = writes ? moveDoubts(move, rooms) : [];
  const query = await searchParams;
  const read = (key: string) => {
    const value = query[key];
    return typeof value === "string" ? value : undefined;
  };
  return (
    <Shell visit={visit} section="library">
      <Link className="link-line" href={`/library${filterToQuery(filterFromQuery(read))}`}>
        Library
      </Link>
      <div className={`spread ${styles.head}`}>
        <h1>{move.name}</h1>
        {writes ? (
          <MoveActs
            id={id}
            name={move.name}
            updatedAt={updatedAt}
            archived={archivedAt !== null}
            plans={used.value.plans.length + used.value.hidden.plans}
          />
        ) : null}
      </div>
      {read("said") === "saved" ? (
        <p role="status" className="done">
          Saved. Plans that use it go by it from now on; signed editions stay as they are.
        </p>
      ) : null}
      {archivedAt === null ? null : (
        <p className="notice">
          It was taken out of the library: it is not offered for new items. Plans that use it keep it.
        </p>
      )}
      <div className={styles.columns}>
        <div>
          <section aria-label="About the move">
            <MoveFacts move={move} springs={knownSprings(rooms, move)} />
            <p className="quiet small">{CAUTION_NOTICE}</p>
          </section>
        </div>
        <div>
          {doubts.length > 0 ? (
            <section>
              <h2>Not said yet</h2>
              <DoubtList doubts={doubts} />
            </section>
          ) : null}
          <section>
            <h2>Where it is used</h2>
            <WhereUsedList used={used.value} />
          </section>
          <section>
            <h2>What happened to it</h2>
            <RecordList record={record} />
          </section>
        </div>
      </div>
    </Shell>
  );
}
