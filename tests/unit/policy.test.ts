/**
 * The policy as a table, written from the studio's own words of who may do what, not from the code: every role on
 * every action, on every kind of plan. A cell that changes changes what somebody may do.
 */
import { describe, expect, test } from "vitest";
import {
  type Actor,
  can,
  canDevice,
  canPlan,
  canReadEditions,
  canReadMarks,
  canSettle,
  type PlanAction,
  type PlanSubject,
  parseRoles,
  ROLES,
  type Role,
  type StudioAction,
} from "#lib/policy/can.ts";

const person = (...roles: Role[]): Actor => ({ kind: "person", id: "me", roles });
const device: Actor = { kind: "device", id: "d", roomId: "harbour" };
const yes = (row: string) =>
  row
    .trim()
    .split(/\s+/)
    .map((cell) => cell === "+");

describe("studio actions", () => {
  //                    trainee coach lead manager crew
  const TABLE: Record<StudioAction, string> = {
    "plan.create": "       +       +     +     -      -",
    "edition.read": "      +       +     +     +      +",
    "library.read": "      +       +     +     +      -",
    "library.write": "     -       -     +     +      -",
    "programme.read": "    -       +     +     +      +",
    "programme.write": "   -       +     +     +      -",
    "month.sign": "        -       -     +     -      -",
    "month.manage": "      -       -     -     +      -",
    "log.remark": "        -       -     +     +      -",
    "look-back.read": "    -       +     +     +      -",
    "feed.own": "          -       +     +     -      -",
    "feeds.manage": "      -       -     -     +      -",
    "floor.run": "         -       +     +     -      -",
    "people.manage": "     -       -     -     +      -",
    "rooms.manage": "      -       -     -     +      -",
    "standards.manage": "  -       -     -     +      -",
    "devices.manage": "    -       -     -     +      -",
    "remarks.read": "      +       +     +     -      -",
    "remarks.write": "     -       -     +     -      -",
    "rubric.write": "      -       -     +     +      -",
    "mail.manage": "       -       -     -     +      -",
    "backups.manage": "    -       -     -     +      -",
    "studio.export": "     -       -     -     +      -",
    "health.read": "       -       -     -     +      -",
    "record.read": "       -       -     -     +      -",
  };
  const actions = Object.keys(TABLE).filter((key): key is StudioAction => key in TABLE);

  test.each(actions)("%s", (action) => {
    expect(ROLES.map((role) => can(person(role), action))).toEqual(yes(TABLE[action]));
    expect([person(), device, null].map((actor) => can(actor, action))).toEqual([false, false, false]);
  });

  test("two roles together may do what either may", () => {
    for (const action of actions) {
      for (const a of ROLES) {
        for (const b of ROLES) {
          expect(can(person(a, b), action)).toBe(can(person(a), action) || can(person(b), action));
        }
      }
    }
  });
});

describe("plan actions", () => {
  const KINDS: Record<string, PlanSubject> = {
    own: { ownerId: "me", sharedWith: [], team: false },
    shared: { ownerId: "other", sharedWith: ["me"], team: false },
    team: { ownerId: "other", sharedWith: [], team: true },
    other: { ownerId: "other", sharedWith: ["third"], team: false },
  };
  // One row a kind of plan; columns as above: trainee coach lead manager crew.
  const TABLE: Record<PlanAction, Record<keyof typeof KINDS, string>> = {
    "plan.read": { own: "+ + + - -", shared: "+ + + - -", team: "- + + - -", other: "- - + - -" },
    "plan.comment": { own: "+ + + - -", shared: "+ + + - -", team: "- + + - -", other: "- - + - -" },
    "plan.write": { own: "+ + + - -", shared: "+ + + - -", team: "- + + - -", other: "- - - - -" },
    "plan.hand-in": { own: "+ + + - -", shared: "+ + + - -", team: "- + + - -", other: "- - - - -" },
    "plan.hand-back": { own: "- - + - -", shared: "- - + - -", team: "- - + - -", other: "- - + - -" },
    "plan.sign": { own: "- - + - -", shared: "- - + - -", team: "- - + - -", other: "- - + - -" },
    "plan.propose": { own: "- - + - -", shared: "- - + - -", team: "- - + - -", other: "- - + - -" },
    "plan.accept-finding": { own: "- - + - -", shared: "- - + - -", team: "- - + - -", other: "- - + - -" },
    "plan.mark": { own: "- - + - -", shared: "- - + - -", team: "- - + - -", other: "- - + - -" },
    "plan.withdraw": { own: "- - + - -", shared: "- - + - -", team: "- - + - -", other: "- - + - -" },
    "plan.share": { own: "+ + + - -", shared: "- - + - -", team: "- - + - -", other: "- - + - -" },
    "plan.delete": { own: "+ + + - -", shared: "- - - - -", team: "- - + - -", other: "- - - - -" },
  };
  const actions = Object.keys(TABLE).filter((key): key is PlanAction => key in TABLE);
  const cells = actions.flatMap((action) => Object.keys(KINDS).map((kind) => [action, kind] as const));

  test.each(cells)("%s on a plan that is: %s", (action, kind) => {
    const plan = KINDS[kind];
    const row = TABLE[action][kind];
    if (!plan || row === undefined) throw new Error(`no row for ${kind}`);
    expect(ROLES.map((role) => canPlan(person(role), action, plan))).toEqual(yes(row));
    expect([person(), device, null].map((actor) => canPlan(actor, action, plan))).toEqual([false, false, false]);
  });

  test("whoever may write, offer for reading or sign a plan may read it", () => {
    for (const plan of Object.values(KINDS)) {
      for (const role of ROLES) {
        for (const action of actions) {
          if (canPlan(person(role), action, plan)) expect(canPlan(person(role), "plan.read", plan)).toBe(true);
        }
      }
    }
  });
});

describe("devices and stored roles", () => {
  test("a device fetches only its own room's cue cards, sends its own logs and joins only its own room's line", () => {
    for (const action of ["card.fetch", "log.send", "line.join"] as const) {
      expect(canDevice(device, action, "harbour")).toBe(true);
      expect(canDevice(device, action, "loft")).toBe(false);
      for (const role of ROLES) expect(canDevice(person(role), action, "harbour")).toBe(false);
      expect(canDevice(null, action, "harbour")).toBe(false);
    }
  });

  test.each([
    ["manager,lead", ["lead", "manager"]],
    [" coach , crew ", ["coach", "crew"]],
    ["coach,coach", ["coach"]],
    ["", []],
    ["owner,admin,Manager,managers", []],
    ["coach;manager", []],
  ])("the stored list %j gives %j", (stored, roles) => {
    expect(parseRoles(stored)).toEqual(roles);
  });
});

describe("of one plan", () => {
  const mine: PlanSubject = { ownerId: "me", sharedWith: [], team: false };
  const foreign: PlanSubject = { ownerId: "other", sharedWith: [], team: false };

  test("everybody in the studio reads its editions; trainees only where they may read the plan", () => {
    //                                                                     trainee coach lead manager crew
    expect(ROLES.map((role) => canReadEditions(person(role), foreign))).toEqual(yes("- + + + +"));
    expect(ROLES.map((role) => canReadEditions(person(role), mine))).toEqual(yes("+ + + + +"));
    for (const nobody of [person(), device, null]) expect(canReadEditions(nobody, mine)).toBe(false);
  });

  test("marks are read by the person they are about, by leads and by managers", () => {
    //                                                                       trainee coach lead manager crew
    expect(ROLES.map((role) => canReadMarks(person(role), "other"))).toEqual(yes("- - + + -"));
    expect(ROLES.map((role) => canReadMarks(person(role), "me"))).toEqual(yes("+ + + + +"));
    for (const nobody of [device, null]) expect(canReadMarks(nobody, "me")).toBe(false);
  });

  test("whoever may comment settles a thread, but one with a lead's comment only a lead", () => {
    expect(ROLES.map((role) => canSettle(person(role), mine, { leadSpoke: false }))).toEqual(yes("+ + + - -"));
    expect(ROLES.map((role) => canSettle(person(role), mine, { leadSpoke: true }))).toEqual(yes("- - + - -"));
    expect(ROLES.map((role) => canSettle(person(role), foreign, { leadSpoke: false }))).toEqual(yes("- - + - -"));
    for (const nobody of [person(), device, null]) expect(canSettle(nobody, mine, { leadSpoke: false })).toBe(false);
  });
});
