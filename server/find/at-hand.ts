/** What a page searches by itself, without asking at every key: pages, rooms, rules, months and their days, signed plans, people. */
import { newestEdition, newestEditionNumbers } from "#db/repos/edition-repo.ts";
import { listMonths } from "#db/repos/month-repo.ts";
import { listMembers, namesById } from "#db/repos/people-repo.ts";
import { listPlanRows } from "#db/repos/plan-repo.ts";
import { listStudioRooms } from "#db/repos/room-repo.ts";
import { monthOf } from "#lib/calendar/days.ts";
import type { AtHand } from "#lib/find/found.ts";
import type { KnownPage } from "#lib/find/known-pages.ts";
import { programPages } from "#lib/find/program-pages.ts";
import { dayAndTime, dayWords, monthTitle } from "#lib/formats/dates.ts";
import { MONTH_RULES } from "#lib/month/check/registry.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import { type Actor, can, canPlan, canReadEditions, canReadMarks, type Person } from "#lib/policy/can.ts";
import { holidayAddress, roomAddress } from "#lib/protocol/places.ts";
import { RULES } from "#lib/rules/registry.ts";
import { NO_RIGHT, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { comingMonths } from "#server/desk/coming-classes.ts";
import { personFormats } from "#server/formats/formats.ts";
import { studioDay } from "#server/month-facts/month-settings.ts";
import { holidaysOfMonth, slotsOfMonth } from "#server/programme/month-slots.ts";

/** Each kind by the right to open it; empty where there is none. Errors: 401, 403 for devices. */
export function readAtHand(app: Springline, actor: Actor): Result<AtHand> {
  if (actor === null) return NOT_SIGNED_IN;
  if (actor.kind !== "person") return NO_RIGHT;
  return ok({
    pages: programPages(actor, monthOf(studioDay(app))),
    rooms: rooms(app, actor),
    classes: can(actor, "programme.read")
      ? [...months(app, actor), ...holidays(app, actor), ...classes(app, actor)]
      : [],
    signed: signedPlans(app, actor),
    people: people(app, actor),
    rules: rules(actor),
  });
}

function rules(person: Person): KnownPage[] {
  const ofPlans = can(person, "library.read") ? RULES : [];
  const ofMonths = can(person, "library.read") && can(person, "programme.read") ? MONTH_RULES : [];
  return [
    ...ofPlans.map(({ id, title, why, fix }) => ({ href: `/rules/${id}`, title, text: why, more: fix })),
    ...ofMonths.map(({ id, title, why, fix }) => ({ href: `/rules/month/${id}`, title, text: why, more: fix })),
  ];
}

function people({ db }: Springline, person: Person): KnownPage[] {
  const readable = listMembers(db).filter(({ id }) => canReadMarks(person, id));
  return readable.map(({ id, name, roles }) => ({ href: `/people/${id}`, title: name, text: roles.join(", ") }));
}

/** For managers where it is set up, for others its week. */
function rooms(app: Springline, person: Person): KnownPage[] {
  const manages = can(person, "rooms.manage");
  if (!manages && !can(person, "programme.read")) return [];
  const month = monthOf(studioDay(app));
  return listStudioRooms(app.db).map(({ id, name, equipment }) => {
    const week = `/programme/${month}?view=wall&room=${encodeURIComponent(id)}`;
    return { href: manages ? roomAddress(id) : week, title: name, text: equipment.name, more: "room" };
  });
}

function holidays(app: Springline, person: Person): KnownPage[] {
  const formats = personFormats(app, person.id);
  return comingMonths(app).flatMap((month) =>
    holidaysOfMonth(app, month).map(([date, name]) => ({
      ...{ href: `/programme/${month}${holidayAddress(date)}`, title: name, beside: "holiday" },
      ...{ text: dayWords(date, formats), more: "holidays day off closed" },
    })),
  );
}

/** The last first. */
function months({ db }: Springline, person: Person): KnownPage[] {
  const formats = personFormats({ db }, person.id);
  return listMonths(db, "0000-00")
    .toReversed()
    .map((month) => ({ href: `/programme/${month}`, title: monthTitle(month, formats) }));
}

function classes(app: Springline, person: Person): KnownPage[] {
  const names = namesById(app.db);
  const formats = personFormats(app, person.id);
  const title = titlesFor(app, person);
  return comingMonths(app).flatMap((month) =>
    slotsOfMonth(app, month).map(({ id, date, time, theme, planId, coachId }): KnownPage => {
      const what = (planId && title(planId)) || theme || "Class";
      const who = (coachId && names.get(coachId)) || "nobody yet";
      const href = `/programme/${month}#class=${encodeURIComponent(id)}`;
      return { href, title: what, text: `${dayAndTime(date, time, formats)}, ${who}`, more: theme };
    }),
  );
}

/** A plan's title where the person may read the plan, else as it was signed, else none. */
function titlesFor({ db }: Springline, person: Person): (planId: string) => string | undefined {
  const rows = new Map(listPlanRows(db).map((row) => [row.id, row]));
  return (planId) => {
    const row = rows.get(planId);
    if (!row || row.deletedAt !== null) return undefined;
    if (canPlan(person, "plan.read", row)) return planTitle(row.title);
    return canReadEditions(person, row) ? newestEdition(db, planId)?.title : undefined;
  };
}

function signedPlans({ db }: Springline, person: Person): KnownPage[] {
  const newest = newestEditionNumbers(db);
  return listPlanRows(db).flatMap((row): KnownPage[] => {
    const number = newest.get(row.id);
    if (number === undefined || row.archivedAt !== null || row.deletedAt !== null) return [];
    if (canPlan(person, "plan.read", row) || !canReadEditions(person, row)) return [];
    const title = planTitle(newestEdition(db, row.id)?.title ?? "");
    return [{ href: `/editions/${row.id}/${number}`, title, text: `edition ${number}` }];
  });
}
