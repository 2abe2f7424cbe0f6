/** Nobody takes a colleague's name, however it is written: changing one's own, inviting, joining. Unicode forms by UAX 15. */
import { afterEach, beforeEach, expect, test } from "vitest";
import { readInvitation, readPerson } from "#db/repos/people-repo.ts";
import { invite } from "#server/people/invite.ts";
import { join } from "#server/people/join.ts";
import { changeOwnName } from "#server/people/own-account.ts";
import { personNameKey } from "#server/people/same-name.ts";
import { must, openStudio, type PlanStudio } from "#tests/support/plan-studio.ts";

let s: PlanStudio;
beforeEach(() => {
  s = openStudio();
});
afterEach(() => s.stop());

const nameOf = (id: string) => readPerson(s.app.db, id)?.name ?? "";

test("one name in many spellings is one name, other names are others", () => {
  const same = [
    ["Ines Vale", " ines  VALE "],
    ["Ines Vale", "Ines\u00a0Vale"],
    ["Ines Vale", "Ines\u2003\u200bVale\u2060"],
    ["Ines Vale", "\uff29\uff4e\uff45\uff53 Vale"],
    ["Renée", "Rene\u0301e"],
    ["Weiß", "WEISS"],
  ] as const;
  for (const [a, b] of same) expect(personNameKey(b)).toBe(personNameKey(a));
  for (const other of ["Ines Valet", "Ines V.", "Renee"])
    expect(personNameKey(other)).not.toBe(personNameKey("Ines Vale"));
  expect(personNameKey("Renee")).not.toBe(personNameKey("Renée"));
});

test("a trainee cannot call themselves as their lead, and may write their own name otherwise", () => {
  const lead = nameOf("ines");
  const own = nameOf("jonas");
  for (const name of [lead, lead.toUpperCase(), `${lead}\u200b`, lead.replace(" ", "\u2003")]) {
    const answer = changeOwnName(s.app, s.people.jonas, { name });
    expect(answer).toMatchObject({ ok: false, error: { status: 409, code: "name-taken" } });
    expect(answer.ok ? "" : answer.error.message).toContain(`${lead} works in this studio`);
    expect(nameOf("jonas")).toBe(own);
  }
  must(changeOwnName(s.app, s.people.jonas, { name: own.toUpperCase() }));
});

test("an invitation and who joins by it are refused a colleague's name; the link stays good", async () => {
  const lead = nameOf("ines");
  const to = { email: "new@quay.example", roles: ["coach" as const] };
  expect(invite(s.app, s.people.petra, { ...to, name: lead })).toMatchObject({
    ok: false,
    error: { code: "name-taken" },
  });
  const { id } = must(invite(s.app, s.people.petra, to));
  const taken = await join(s.app, id, { name: lead.toLowerCase(), password: "a long enough one" });
  expect(taken).toMatchObject({ ok: false, error: { code: "name-taken" } });
  expect(readInvitation(s.app.db, id)?.status).toBe("pending");
  must(await join(s.app, id, { name: `${lead} the Younger`, password: "a long enough one" }));
});
