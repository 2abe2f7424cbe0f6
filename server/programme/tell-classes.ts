/** Notices of changed classes: one each, or one for many that one person changed for another in a burst. */
import { deleteNotices, listUnmailedNotices } from "#db/repos/notice-repo.ts";
import { BURST_MS, bundled, deedOf, MOST_SINGLY } from "#lib/notices/class-bundle.ts";
import type { ClassChange } from "#lib/notices/class-changes.ts";
import type { ChangedClass } from "#lib/notices/class-words.ts";
import type { NoticeData } from "#lib/notices/kinds.ts";
import type { Springline } from "#server/context/springline.ts";
import { tell } from "#server/notices/tell.ts";
import { monthOfKey, slotOfKey } from "./class-sources.ts";

type App = Pick<Springline, "db" | "now">;

interface Group {
  readonly kind: "class-changed" | "class-ahead";
  readonly userId: string;
  readonly byId: string | null;
  readonly classes: ChangedClass[];
}

/** In the transaction of the caller. */
export function tellClasses(app: App, changes: readonly ClassChange[]): void {
  for (const group of groupsOf(changes).values()) tellGroup(app, group);
}

/** By reader, by whoever did it, and by what it is to the reader. */
function groupsOf(changes: readonly ClassChange[]): Map<string, Group> {
  const groups = new Map<string, Group>();
  for (const { key, is, ahead, to } of changes)
    for (const { userId, byId, was } of to) {
      const one = { month: monthOfKey(key), slot: slotOfKey(key), was, is };
      const kind = ahead ? "class-ahead" : "class-changed";
      const name = JSON.stringify([kind, userId, byId, deedOf(one, userId)]);
      const group = groups.get(name) ?? { kind, userId, byId, classes: [] };
      group.classes.push(one);
      groups.set(name, group);
    }
  return groups;
}

/** Notices of the same burst that nobody has seen or been mailed yet become part of this one. */
function tellGroup(app: App, { kind, userId, byId, classes }: Group): void {
  const [first] = classes;
  if (!first) return;
  const before = listUnmailedNotices(app.db, userId, app.now() - BURST_MS).filter(
    (row) => row.kind === kind && row.data.byId === byId && isSameDeed(row.data, first, userId),
  );
  const all = bundled([...before.flatMap(({ data }) => classesIn(data)), ...classes]);
  const say = (data: Omit<NoticeData, "byId">) =>
    tell(app, { kind, to: [userId], planId: null, data: { byId, ...data } });
  if (all.length <= MOST_SINGLY) for (const changedClass of classes) say({ changedClass });
  else {
    deleteNotices(
      app.db,
      before.map(({ id }) => id),
    );
    say({ changedClasses: all });
  }
}

const classesIn = ({ changedClass, changedClasses = [] }: NoticeData): readonly ChangedClass[] =>
  changedClass ? [changedClass] : changedClasses;

function isSameDeed(data: NoticeData, one: ChangedClass, userId: string): boolean {
  const [first] = classesIn(data);
  return first !== undefined && deedOf(first, userId) === deedOf(one, userId);
}
