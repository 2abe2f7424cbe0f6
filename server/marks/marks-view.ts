/** Marks as people read them: with the name of who set them. */
import type { StoredMarks } from "#db/repos/marks-repo.ts";
import { FORMER_MEMBER, namesById } from "#db/repos/people-repo.ts";
import type { Springline } from "#server/context/springline.ts";

export interface MarksView extends StoredMarks {
  readonly byName: string;
  /** Newer marks about the same round or class took their place. */
  readonly replaced: boolean;
}

/** In the order given, which is the oldest first. */
export function viewsOf(app: Pick<Springline, "db">, all: readonly StoredMarks[]): MarksView[] {
  const names = namesById(app.db);
  const newest = new Map(all.map((marks) => [aboutKey(marks), marks.id]));
  return all.map((marks) => ({
    ...marks,
    byName: names.get(marks.byId) ?? FORMER_MEMBER,
    replaced: newest.get(aboutKey(marks)) !== marks.id,
  }));
}

const aboutKey = ({ planId, round, sessionId }: StoredMarks): string => `${planId} ${round ?? ""} ${sessionId ?? ""}`;
