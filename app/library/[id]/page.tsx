/** One move: everything about it, where it is used, its history. */
import type { Metadata } from "next";
import { headers } from "next/headers";
import Link from "next/link";
import { notFound } from "next/navigation";
import { CAUTION_NOTICE } from "#lib/cautions/expected.ts";
import { type MoveDoubt, moveDoubts } from "#lib/library/doubts.ts";
import { filterFromQuery, filterToQuery } from "#lib/library/filter-query.ts";
import { knownSprings } from "#lib/library/known-springs.ts";
import { can } from "#lib/policy/can.ts";
import { actorFromHeaders } from "#server/context/actor-from-headers.ts";
import { springline } from "#server/context/springline.ts";
import { type MoveDetail, type MoveRecordLine, readMoveDetail } from "#server/library/read-move.ts";
import { type WhereUsed, whereUsed } from "#server/library/where-used.ts";
import { listRooms } from "#server/rooms/manage-rooms.ts";
import { requirePerson } from "../../_shell/person.ts";
import { Shell } from "../../_shell/shell.tsx";
import { DoubtList } from "../_move/doubt-list.tsx";
import styles from "../_move/move.module.css";
import { MoveActs } from "../_move/move-acts.tsx";
import { MoveFactList } from "../_move/move-facts.tsx";
import { MoveFigures } from "../_move/move-figures.tsx";
import { MoveMuscles } from "../_move/move-muscles.tsx";
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
  const { move, archivedAt, record } = found.value;
  const known = listRooms(app, who.actor);
  const rooms = known.ok ? known.value : [];
  const writes = can(who.actor, "library.write");
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
        {writes ? <MoveActs {...actsOf(id, found.value, used.value)} /> : null}
      </div>
      <Notices saved={read("said") === "saved"} archived={archivedAt !== null} />
      <div className={styles.columns}>
        <section aria-label="About the move">
          <MoveFigures move={move} />
          <MoveMuscles move={move} />
          <MoveFactList move={move} springs={knownSprings(rooms, move)} />
          <p className="quiet small">{CAUTION_NOTICE}</p>
        </section>
        <Beside doubts={writes ? moveDoubts(move, rooms, visit.formats) : []} used={used.value} record={record} />
      </div>
    </Shell>
  );
}

const actsOf = (id: string, { move, updatedAt, archivedAt }: MoveDetail, { plans, hidden }: WhereUsed) => ({
  id,
  name: move.name,
  updatedAt,
  archived: archivedAt !== null,
  plans: plans.length + hidden.plans,
});

function Notices({ saved, archived }: { readonly saved: boolean; readonly archived: boolean }) {
  return (
    <>
      {saved ? (
        <p role="status" className="done">
          Saved. Plans that use the move follow it from now on; signed editions stay as they are.
        </p>
      ) : null}
      {archived ? (
        <p className="notice">
          This move is out of the library: it is not offered for new items. Plans that use it keep it.
        </p>
      ) : null}
    </>
  );
}

interface BesideProps {
  readonly doubts: readonly MoveDoubt[];
  readonly used: WhereUsed;
  readonly record: readonly MoveRecordLine[];
}

function Beside({ doubts, used, record }: BesideProps) {
  return (
    <div>
      {doubts.length > 0 ? (
        <section>
          <h2>Still missing</h2>
          <DoubtList doubts={doubts} />
        </section>
      ) : null}
      <section>
        <h2>Where it is used</h2>
        <WhereUsedList used={used} />
      </section>
      <section>
        <h2>History</h2>
        <RecordList record={record} />
      </section>
    </div>
  );
}
