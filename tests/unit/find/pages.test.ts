/** The program's own pages, rooms and holidays: found by name, by those who may open them. */
import { afterEach, beforeEach, expect, test } from "vitest";
import { findPages, pageIndex } from "#lib/find/known-pages.ts";
import { programPages } from "#lib/find/program-pages.ts";
import { soughtWords, textWords, titleRank } from "#lib/find/words.ts";
import { ROLES, type Role } from "#lib/policy/can.ts";
import { setHoliday } from "#lib/programme/write-lists.ts";
import { monthDoc } from "#server/context/live-documents.ts";
import { readAtHand } from "#server/find/at-hand.ts";
import { findByWords } from "#server/find/find-words.ts";
import { archivePlan } from "#server/plans/archive-plan.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { must, openStudio, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";

let s: PlanStudio;
beforeEach(() => {
  s = openStudio({ clock: Date.now() });
});
afterEach(() => s.stop());

const pagesOf = (role: Role) => programPages({ kind: "person", id: "p", roles: [role] }, "2026-12");
const first = (role: Role, text: string) => findPages(pageIndex(pagesOf(role)), soughtWords(text), 1)[0]?.href;

test.each([
  ["desk", "/desk"],
  ["month", "/studio#month"],
  ["programme", "/programme"],
  ["library", "/library"],
  ["settings", "/settings"],
  ["studio", "/studio"],
  ["health", "/studio/health"],
  ["export", "/studio#export"],
  ["help", "/help"],
  ["people", "/people"],
  ["rules", "/rules"],
  ["notices", "/notices"],
  ["password", "/settings#password"],
  ["settings password", "/settings#password"],
  ["dates and un", "/settings#formats"],
  ["backups", "/studio#backups"],
])("a manager who types “%s” is led to %s", (text, href) => {
  expect(first("manager", text)).toBe(href);
});

test("nobody is led to a page that would refuse them", () => {
  const hrefs = (role: Role) => pagesOf(role).map(({ href }) => href);
  for (const role of ROLES) {
    expect(hrefs(role)).toEqual(expect.arrayContaining(["/desk", "/settings", "/notices", "/help", "/people/p"]));
    expect([role, hrefs(role).some((href) => href.startsWith("/studio"))]).toEqual([role, role === "manager"]);
  }
  expect(first("trainee", "programme")).toBeUndefined();
  expect(first("crew", "library")).toBeUndefined();
  expect(first("coach", "health")).toBeUndefined();
  expect(first("coach", "month")).toBe("/programme");
});

test("the very title first, then titles that begin with the words, then others", () => {
  const rank = (title: string, asked: string) => titleRank(textWords(title), soughtWords(asked));
  expect(["Slow row", "Rowing", "Row", "Other", "Row and press"].map((title) => rank(title, "row"))).toEqual([
    2, 1, 0, 4, 1,
  ]);
  expect(["Press, row", "Row, press", "Row pressed slowly", "Row"].map((t) => rank(t, "row press"))).toEqual([
    2, 0, 1, 3,
  ]);
});

test("of plans and moves too the title that was typed comes first, even if the plan is archived", async () => {
  const make = (title: string) => {
    s.advance(1000);
    return must(createPlan(s.app, s.people.jonas, { title, lengthSeconds: 600, roomId: ROOMS.harbour })).id;
  };
  const exact = make("Row");
  for (let n = 0; n < 9; n++) make(`Slow row ${n}`);
  make("Rowing");
  must(findByWords(s.app, s.people.jonas, "row"));
  await s.app.checks.idle();
  const titles = () => must(findByWords(s.app, s.people.jonas, "row")).plans.map(({ title }) => title);
  expect(titles().slice(0, 3)).toEqual(["Row", "Rowing", "Slow row 8"]);
  must(archivePlan(s.app, s.people.jonas, exact, true));
  expect(titles().slice(0, 2)).toEqual(["Row", "Rowing"]);
});

test("rooms lead managers to where they are set up, others to their week, trainees nowhere", async () => {
  const rooms = (who: "petra" | "marta" | "jonas") => must(readAtHand(s.app, s.people[who])).rooms;
  expect(rooms("petra").map(({ href }) => href)).toContain(`/studio#room-${ROOMS.harbour}`);
  expect(rooms("marta")[0]?.href).toMatch(/^\/programme\/\d{4}-\d\d\?view=wall&room=/);
  expect(rooms("jonas")).toEqual([]);
});

test("a holiday of a coming month is found by its name and leads to that day", async () => {
  const date = `${new Date(Date.now()).toISOString().slice(0, 7)}-28`;
  await s.write(monthDoc(date.slice(0, 7)), s.people.marta, (w) => setHoliday(w, date, "Regatta day"));
  const found = (who: "marta" | "jonas", text: string) =>
    findPages(pageIndex(must(readAtHand(s.app, s.people[who])).classes), soughtWords(text), 3);
  for (const text of ["regatta", "holiday", "day off"])
    expect(found("marta", text).map(({ href }) => href)).toEqual([`/programme/${date.slice(0, 7)}#holiday=${date}`]);
  expect(found("jonas", "regatta")).toEqual([]);
});
