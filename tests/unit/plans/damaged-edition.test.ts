/** An edition whose row was altered in the database file goes to nobody, and says so; all others go on. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { readEdition } from "#db/repos/edition-repo.ts";
import { takeLog } from "#server/class-log/take-log.ts";
import { addDevice } from "#server/devices/manage-devices.ts";
import { pairDevice } from "#server/devices/pair-device.ts";
import { readRoomCards } from "#server/devices/read-cards.ts";
import {
  type EditionForm,
  editionFile,
  listPlanEditions,
  listSignedPlans,
  readSignedEdition,
} from "#server/editions/editions.ts";
import { createLineHost } from "#server/line/host.ts";
import { withdrawEdition } from "#server/sign-off/withdraw-edition.ts";
import { must, openStudio, outcome, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";
import { signedClass, taughtLog } from "#tests/support/signed-class.ts";

let s: PlanStudio;
let id: string;
let other: string;
let log: ReturnType<typeof taughtLog>;
let hash: string;
beforeEach(async () => {
  s = openStudio();
  const made = await signedClass(s);
  id = made.id;
  log = taughtLog(made.card, [], 1);
  hash = made.card.edition.hash;
  other = (await signedClass(s)).id;
  // Whoever has the file can take the guards off as well.
  for (const name of s.db.raw
    .prepare<[], string>("select name from sqlite_master where type = 'trigger'")
    .pluck()
    .all())
    s.db.raw.exec(`drop trigger "${name}"`);
});
afterEach(() => s.stop());

const device = () => {
  const made = must(addDevice(s.app, s.people.petra, { name: "Tablet", roomId: ROOMS.harbour }));
  must(pairDevice(s.app, made.code, null));
  return { kind: "device", id: made.id, roomId: ROOMS.harbour } as const;
};
const FORMS: readonly EditionForm[] = ["plan", "card", "cues.vtt", "chapters.vtt"];
const cardsOf = (room: { cards: readonly { card: { edition: { planId: string } } }[] }) =>
  room.cards.map(({ card }) => card.edition.planId);

const ALTERATIONS: Readonly<Record<string, string>> = {
  "words of the plan": "plan_json = replace(plan_json, 'Pull & press', 'Pull & punch')",
  "words of the plan, and its hash with them": "plan_json = '{\"title\":\"x\"}', hash = '5e8f5a8c0fa0b4b7'",
  "seconds on the card": "card_json = replace(card_json, '\"seconds\":', '\"seconds\":1')",
  "the room on the card": "card_json = json_set(card_json, '$.card.room.id', 'loft')",
  "the signature":
    // Its first letter is another one, whatever it was.
    "card_json = json_set(card_json, '$.signature', iif(json_extract(card_json, '$.signature') LIKE 'A%', 'B', 'A') || substr(json_extract(card_json, '$.signature'), 2))",
  "the key that signed": "card_json = json_set(card_json, '$.keyId', '0000000000000000')",
  "the whole card": "card_json = 'no json'",
  "the plan, no JSON any more": "plan_json = 'no json'",
  "the card of another edition": "card_json = (select card_json from edition o where o.plan_id <> edition.plan_id)",
  "its number": "number = 7",
};
const alter = (set: string) =>
  expect(s.db.raw.prepare(`update edition set ${set} where plan_id = ?`).run(id).changes).toBe(1);
const numberNow = () =>
  s.db.raw.prepare<[string], number>("select number from edition where plan_id = ?").pluck().get(id) ?? 0;

describe("[INV-13] an altered edition", () => {
  test.each(Object.entries(ALTERATIONS))("%s: served nowhere, and said which it is", (_what, set) => {
    const { sam, ines } = s.people;
    const tablet = device();
    const line = createLineHost(s.app);
    expect(cardsOf(must(readRoomCards(s.app, tablet))).sort()).toEqual([id, other].sort());
    expect(line.isSigned({ planId: id, number: 1, hash })).toBe(true);
    alter(set);
    const number = numberNow();
    const refused = readSignedEdition(s.app, sam, id, number);
    expect(refused).toMatchObject({ ok: false, error: { code: "edition-damaged", status: 409 } });
    expect(refused.ok ? "" : refused.error.message).toContain(`Edition ${number} is damaged`);
    for (const form of FORMS)
      expect(outcome(editionFile(s.app, sam, { planId: id, number, form }))).toBe("edition-damaged");
    expect(cardsOf(must(readRoomCards(s.app, tablet)))).toEqual([other]);
    expect(line.isSigned({ planId: id, number, hash })).toBe(false);
    expect(outcome(takeLog(s.app, tablet, log))).toBe("no-such-edition");
    // The lists still stand, and name it.
    expect(must(listPlanEditions(s.app, sam, id)).editions).toMatchObject([{ number, damaged: true }]);
    const all = must(listSignedPlans(s.app, sam)).plans.map(({ planId, damaged }) => [planId, damaged]);
    expect(new Map(all as [string, boolean][])).toEqual(
      new Map([
        [id, true],
        [other, false],
      ]),
    );
    // A lead can still take it out of use.
    expect(outcome(withdrawEdition(s.app, ines, { planId: id, number }, "damaged"))).toBe("ok");
  });
});

test("put back as it was it is what was signed again; a card past its end is no damage", () => {
  const before = readEdition(s.db, id, 1)?.planJson ?? "";
  alter("plan_json = 'no json'");
  expect(outcome(readSignedEdition(s.app, s.people.sam, id, 1))).toBe("edition-damaged");
  s.db.raw.prepare("update edition set plan_json = ? where plan_id = ?").run(before, id);
  s.advance(400 * 86_400_000);
  expect(must(readSignedEdition(s.app, s.people.sam, id, 1)).damaged).toBe(false);
});

test("a key that somebody put into the database signs nothing of this studio", () => {
  const forged = s.app.keys.publicKey.split("").reverse().join("");
  s.db.raw.prepare("update signing_key set public_key = ?").run(forged);
  expect(outcome(readSignedEdition(s.app, s.people.sam, id, 1))).toBe("edition-damaged");
});
