/** Who finds what: only what the policy lets them open, over HTTP as a stranger would ask; order, archived and deleted plans. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import * as atHandRoute from "#app/api/find/at-hand/route.ts";
import * as findRoute from "#app/api/find/route.ts";
import { planParts } from "#lib/doc/layout.ts";
import { addScriptLine, insertItems } from "#lib/doc/write.ts";
import type { AtHand, FoundByWords } from "#lib/find/found.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { setSpringline } from "#server/context/springline.ts";
import { archivePlan } from "#server/plans/archive-plan.ts";
import { changePlan } from "#server/plans/change-plan.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { deletePlan, restorePlan } from "#server/plans/delete-plan.ts";
import { sharePlan } from "#server/plans/share-plan.ts";
import { GOOD_ITEMS } from "#tests/support/good-class.ts";
import { must, openStudio, type PlanStudio, ROOMS, type Who } from "#tests/support/plan-studio.ts";
import { hashNothing, signInAll } from "#tests/support/sign-in.ts";

const EVERYBODY: readonly Who[] = ["ines", "marta", "jonas", "noor", "petra", "sam"];
let s: PlanStudio;
let cookies: ReadonlyMap<Who, string>;
beforeEach(async () => {
  s = openStudio({ clock: Date.now() });
  setSpringline(s.app);
  await hashNothing(s);
  cookies = await signInAll(s, EVERYBODY);
});
afterEach(async () => {
  setSpringline(undefined);
  await s.stop();
});

/** A plan with a word in its script that stands nowhere else. */
async function planOf(who: Who, title: string, said = ""): Promise<string> {
  const { id } = must(createPlan(s.app, s.people[who], { title, lengthSeconds: 600, roomId: ROOMS.harbour }));
  await s.write(planDoc(id), s.people[who], (w) => {
    insertItems(w, null, GOOD_ITEMS.slice(0, 2));
    if (said) addScriptLine(w, "m1", { kind: "form", text: said });
  });
  return id;
}

async function ask<T>(route: typeof findRoute, who: Who | null, q = ""): Promise<{ status: number; value: T }> {
  const headers = new Headers();
  const cookie = who && cookies.get(who);
  if (cookie) headers.set("cookie", cookie);
  const response = await route.GET(new Request(`${s.app.env.origin}/api/find?q=${encodeURIComponent(q)}`, { headers }));
  return { status: response.status, value: (await response.json()) as T };
}
const titles = async (who: Who, q: string) =>
  (await ask<FoundByWords>(findRoute, who, q)).value.plans.map(({ title }) => title);

describe("a trainee's plan that is nobody else's", () => {
  test("is found by its owner and by leads, by title and by what is said, and by nobody else", async () => {
    const id = await planOf("jonas", "Quiet harbour", "like a gannet diving");
    for (const who of EVERYBODY) {
      const may = who === "jonas" || who === "ines";
      for (const q of ["quiet", "gannet", "harb gannet"]) {
        const { status, value } = await ask<FoundByWords>(findRoute, who, q);
        expect([who, q, status, value.plans.map((plan) => plan.id)]).toEqual([who, q, 200, may ? [id] : []]);
        // No number and no word tells of it either.
        if (!may)
          expect([value.morePlans, value.unread, JSON.stringify(value)]).toEqual([
            0,
            0,
            expect.not.stringMatching(/quiet|gannet/i),
          ]);
      }
      const { value } = await ask<AtHand>(atHandRoute, who);
      expect(JSON.stringify([value.signed, value.classes])).not.toContain("Quiet");
    }
    expect((await ask(findRoute, null, "quiet")).status).toBe(401);
    expect((await ask(atHandRoute, null)).status).toBe(401);
  });

  test("is found by whom it is shared with, until it is not, and by coaches once it is the team's", async () => {
    const id = await planOf("jonas", "Quiet harbour");
    must(sharePlan(s.app, s.people.jonas, id, { userId: "noor", on: true }));
    expect([await titles("noor", "quiet"), await titles("marta", "quiet")]).toEqual([["Quiet harbour"], []]);
    must(sharePlan(s.app, s.people.jonas, id, { userId: "noor", on: false }));
    must(changePlan(s.app, s.people.jonas, id, { team: true }));
    expect([await titles("noor", "quiet"), await titles("marta", "quiet")]).toEqual([[], ["Quiet harbour"]]);
  });
});

test("a deleted plan is not found until it is restored; an archived one is, after the others and said to be", async () => {
  const gone = await planOf("jonas", "Rowing one");
  const kept = await planOf("jonas", "Rowing two");
  await planOf("jonas", "Rowing three");
  must(deletePlan(s.app, s.people.jonas, gone));
  must(archivePlan(s.app, s.people.jonas, kept, true));
  const { value } = await ask<FoundByWords>(findRoute, "jonas", "rowing");
  expect(value.plans.map(({ title, archived }) => [title, archived])).toEqual([
    ["Rowing three", false],
    ["Rowing two", true],
  ]);
  must(restorePlan(s.app, s.people.jonas, gone));
  expect(await titles("jonas", "rowing")).toContain("Rowing one");
});

test("titles come before items, items before what is said; each line leads to its place", async () => {
  const said = await planOf("jonas", "First", "row as a boat would");
  const titled = await planOf("jonas", "Row");
  const { value } = await ask<FoundByWords>(findRoute, "jonas", "row");
  expect(value.plans.map(({ id }) => id)).toEqual([titled, said]);
  expect(value.plans[1]?.lines).toEqual([
    { place: "item", text: "Kneeling row", href: `/plans/${said}#line-m1` },
    { place: "said", text: "row as a boat would", href: `/plans/${said}#line-m1:3` },
  ]);
  expect(value.plans[0]?.lines.map(({ place }) => place)).toEqual(["item"]);
  expect(value.moves.map(({ href }) => href)).toEqual(["/library/kneeling-row"]);
});

test("more than is shown is counted", async () => {
  for (let n = 0; n < 10; n++) {
    s.advance(1000);
    await planOf("jonas", `Tide ${n}`);
  }
  const { value } = await ask<FoundByWords>(findRoute, "jonas", "tide");
  expect([value.plans.length, value.morePlans, value.plans[0]?.title]).toEqual([8, 2, "Tide 9"]);
});

test("a plan that the index does not know is read when somebody looks for words, and is said to be missing until then", async () => {
  const id = await planOf("jonas", "Quiet harbour");
  s.app.words.drop(id);
  const first = await ask<FoundByWords>(findRoute, "jonas", "quiet");
  expect([first.value.plans.length, first.value.unread]).toEqual([0, 1]);
  await s.app.checks.idle();
  const next = await ask<FoundByWords>(findRoute, "jonas", "quiet");
  expect([next.value.plans.length, next.value.unread]).toEqual([1, 0]);
});

test("a new title is found, the old one is not", async () => {
  const id = await planOf("jonas", "Quiet harbour");
  await s.write(planDoc(id), s.people.jonas, ({ doc }) => {
    planParts(doc).title.delete(0, 5);
    planParts(doc).title.insert(0, "Loud");
  });
  expect([await titles("jonas", "quiet"), await titles("jonas", "loud")]).toEqual([[], ["Loud harbour"]]);
});

test("what is asked is bounded, and too little finds nothing", async () => {
  await planOf("jonas", "Quiet harbour");
  const long = await ask<{ error: { message: string } }>(findRoute, "jonas", "q".repeat(81));
  expect([long.status, long.value.error.message]).toEqual([422, expect.stringContaining("at most 80 letters")]);
  for (const q of ["", "q", "  ", "%", '"*', "‮"]) expect(await titles("jonas", q)).toEqual([]);
});

test("rules, months and people by the right to open them; trainees find themselves, crew finds no rule", async () => {
  const at = async (who: Who) => (await ask<AtHand>(atHandRoute, who)).value;
  const [jonas, sam, ines, marta] = [await at("jonas"), await at("sam"), await at("ines"), await at("marta")];
  expect(jonas.people.map(({ href }) => href)).toEqual(["/people/jonas"]);
  expect(ines.people.length).toBe(EVERYBODY.length);
  expect([sam.rules.length, jonas.rules.length > 20]).toEqual([0, true]);
  expect([jonas, marta].map(({ rules }) => rules.some(({ href }) => href.startsWith("/rules/month/")))).toEqual([
    false,
    true,
  ]);
});
