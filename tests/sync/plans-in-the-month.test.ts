/** The month hears how its plans stand: on joining, when a slot gets a plan, and when a plan changes. */

import { afterEach, beforeEach, expect, test } from "vitest";
import { planParts } from "#lib/doc/layout.ts";
import { setText } from "#lib/doc/write.ts";
import type { Slot } from "#lib/programme/layout.ts";
import type { DocName } from "#lib/protocol/messages.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { deletePlan } from "#server/plans/delete-plan.ts";
import { sharePlan } from "#server/plans/share-plan.ts";
import { readProgramme } from "#server/programme/read-programme.ts";
import { handIn, takeBack } from "#server/sign-off/hand-in.ts";
import { addShown, setShown } from "#tests/support/shown-slot.ts";
import { must, openStudio, type PlanStudio, ROOMS, type Who } from "../support/plan-studio.ts";

const NOVEMBER: DocName = { kind: "month", key: "2026-11" };
const slot: Slot = {
  id: "s1",
  date: "2026-11-04",
  time: "09:00",
  minutes: 45,
  theme: "Arms",
  coachId: "marta",
  roomId: ROOMS.harbour,
  planId: null,
  note: "",
};
let s: PlanStudio;
beforeEach(() => {
  s = openStudio();
});
afterEach(() => s.stop());

test("the plans of a month's slots are told as they change, and no others", async () => {
  const { marta } = s.people;
  const make = (title: string) =>
    must(createPlan(s.app, marta, { title, lengthSeconds: 600, roomId: ROOMS.harbour, team: true })).id;
  const [used, unused] = [make("Used"), make("Unused")];
  const plans = () => s.last(NOVEMBER, "plans")?.plans;

  await s.write(NOVEMBER, marta, (w) => addShown(w, slot));
  expect(plans()).toEqual([]);
  await s.write(NOVEMBER, marta, (w) => setShown(w, "s1", "planId", used));
  expect(plans()).toMatchObject([{ id: used, title: "Used", state: "in-writing", edition: 0, ownerName: "Marta" }]);

  // A class that only moves is no news of plans: sixty plans to every page would follow each key.
  s.announced.length = 0;
  await s.write(NOVEMBER, marta, (w) => setShown(w, "s1", "time", "10:00"));
  expect(plans()).toBeUndefined();

  await s.write(planDoc(used), marta, (w) => setText(w, planParts(w.doc).title, "Used well"));
  expect(plans()).toMatchObject([{ id: used, title: "Used well" }]);
  must(await handIn(s.app, marta, used));
  expect(plans()).toMatchObject([{ id: used, state: "handed-in" }]);

  s.announced.length = 0;
  must(await handIn(s.app, marta, unused));
  expect(plans()).toBeUndefined();

  const session = { sessionId: "x", userId: marta.id, name: "Marta" };
  const plansSaid = s.host.welcome?.(NOVEMBER, session).find(({ t }) => t === "plans");
  expect(plansSaid).toMatchObject({ plans: [{ id: used }] });
  must(await takeBack(s.app, marta, used));
  s.announced.length = 0;
  must(deletePlan(s.app, marta, used));
  expect(plans()).toEqual([]);
  expect(must(readProgramme(s.app, s.people.sam, "2026-11"))).toMatchObject({
    slots: [{ id: "s1", planId: used }],
    plans: [],
    hidden: [],
  });
});

test("[INV-09] a private plan in the month is told to those who may read it; the others hear that there is one", async () => {
  const { jonas, marta, sam, ines } = s.people;
  const made = { title: "Jonas alone", lengthSeconds: 600, roomId: ROOMS.harbour, team: false };
  const { id } = must(createPlan(s.app, jonas, made));
  await s.write(NOVEMBER, marta, (w) => addShown(w, { ...slot, planId: id }));
  const heard = (who: Who) => s.last(NOVEMBER, "plans", who);
  const welcomed = (who: Who) =>
    s.host.welcome?.(NOVEMBER, { sessionId: "x", userId: who, name: who })?.find(({ t }) => t === "plans");
  for (const who of ["marta", "sam", "petra"] as const) {
    for (const news of [heard(who), welcomed(who)])
      expect(news).toMatchObject({ t: "plans", plans: [], hidden: [id], facts: { [id]: { title: "", known: false } } });
  }
  for (const news of [heard("ines"), welcomed("ines")]) expect(news).toMatchObject({ plans: [{ title: made.title }] });
  expect(must(readProgramme(s.app, sam, "2026-11"))).toMatchObject({ plans: [], hidden: [id] });
  expect(must(readProgramme(s.app, ines, "2026-11"))).toMatchObject({ plans: [{ title: made.title }], hidden: [] });

  // Shared, it is told at once; taken back, no more.
  must(sharePlan(s.app, jonas, id, { userId: marta.id, on: true }));
  expect(heard("marta")).toMatchObject({ plans: [{ title: made.title, ownerName: "Jonas" }], hidden: [] });
  expect(heard("sam")).toMatchObject({ plans: [], hidden: [id] });
  must(sharePlan(s.app, jonas, id, { userId: marta.id, on: false }));
  expect(heard("marta")).toMatchObject({ plans: [], hidden: [id] });
});

test("a month nobody has opened is an empty one, and months far away are none", () => {
  expect(must(readProgramme(s.app, s.people.marta, "2027-01"))).toEqual({
    month: "2027-01",
    slots: [],
    plans: [],
    hidden: [],
  });
  expect(s.app.documents.generation({ kind: "month", key: "2027-01" })).toBeUndefined();
  expect(s.host.kinds.month.create?.("2046-11")).toBeNull();
  expect(s.host.kinds.month.create?.("2026-12")).not.toBeNull();
});
