/** A studio in which everything happened that the record speaks of: plans, an edition signed and withdrawn, people, classes. */
import { insertAcceptance } from "#db/repos/acceptance-repo.ts";
import { insertClassLogRemark } from "#db/repos/class-log-remark-repo.ts";
import { insertMonthEdition } from "#db/repos/month-edition-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { takeLog } from "#server/class-log/take-log.ts";
import { addDevice, takeBackDevice } from "#server/devices/manage-devices.ts";
import { pairDevice } from "#server/devices/pair-device.ts";
import { archiveMove } from "#server/library/archive-move.ts";
import { rubricNow } from "#server/marks/rubric.ts";
import { setMarks } from "#server/marks/set-marks.ts";
import { invite, revokeInvitation } from "#server/people/invite.ts";
import { changeRoles, removePerson } from "#server/people/manage-people.ts";
import { makeResetLink } from "#server/people/reset-password.ts";
import { archivePlan } from "#server/plans/archive-plan.ts";
import { sharePlan } from "#server/plans/share-plan.ts";
import { addRoom, changeRoom } from "#server/rooms/manage-rooms.ts";
import { withdrawEdition } from "#server/sign-off/withdraw-edition.ts";
import { changePolicy } from "#server/studio/change-policy.ts";
import { EQUIPMENT, must, openStudio, type PlanStudio, ROOMS, START } from "./plan-studio.ts";
import { signedClass, taughtLog } from "./signed-class.ts";

export interface RecordedStudio extends PlanStudio {
  readonly planId: string;
}

export async function recordedStudio(): Promise<RecordedStudio> {
  const s = openStudio();
  const { petra, ines, jonas, marta } = s.people;
  const next = () => s.advance(60_000);
  const { id, card } = await signedClass(s);
  next();
  must(sharePlan(s.app, jonas, id, { userId: marta.id, on: true }));
  const { code, id: deviceId } = must(addDevice(s.app, petra, { name: "Screen", roomId: ROOMS.harbour }));
  must(pairDevice(s.app, code, null));
  const device = { kind: "device", id: deviceId, roomId: ROOMS.harbour } as const;
  for (const session of [1, 2]) {
    next();
    must(takeLog(s.app, device, taughtLog(card, [["next", 130]], session)));
  }
  must(takeBackDevice(s.app, petra, deviceId));
  next();
  read(s, id);
  next();
  must(withdrawEdition(s.app, ines, { planId: id, number: 1 }, "The firm spring is worn."));
  must(archiveMove(s.app, ines, "chest-press", { archived: true, base: START }));
  next();
  must(addRoom(s.app, petra, { name: "Boat shed", equipment: EQUIPMENT }));
  const fewer = { ...EQUIPMENT, springs: EQUIPMENT.springs.slice(0, 1) };
  must(changeRoom(s.app, petra, ROOMS.loft, { equipment: fewer, seen: { ...EQUIPMENT, name: "Loft machines" } }));
  must(changePolicy(s.app, petra, { soleAuthorMaySign: true }));
  next();
  const { id: link } = must(invite(s.app, petra, { email: "ona@tholepin.example", roles: ["coach"] }));
  must(revokeInvitation(s.app, petra, link));
  must(makeResetLink(s.app, petra, "noor"));
  must(changeRoles(s.app, petra, "marta", ["coach", "lead"]));
  must(removePerson(s.app, petra, "sam"));
  must(archivePlan(s.app, jonas, id, true));
  return { ...s, planId: id };
}

/** Marks, an accepted finding, a signed month, a remark on a log. */
function read(s: PlanStudio, planId: string): void {
  const about = { kind: "round", round: 1 } as const;
  const levels = Object.fromEntries(rubricNow(s.app).criteria.map((criterion) => [criterion.id, 1]));
  must(setMarks(s.app, s.people.ines, planId, { about, levels, sentence: "Breathe sooner." }));
  const by = { at: s.app.now(), actorId: s.people.ines.id };
  inTransaction(s.db, () => {
    const texts = {
      ruleId: "silent-stretch",
      findingKey: "k",
      message: "Nothing is said.",
      reason: "They know this one.",
    };
    insertAcceptance(s.db, { id: "a1", planId, byId: by.actorId, at: by.at, ...texts });
    const month = {
      month: "2026-11",
      number: 1,
      hash: "0".repeat(64),
      fileJson: "{}",
      findingsJson: "[]",
      acceptedJson: "[]",
    };
    insertMonthEdition(s.db, { ...month, signedBy: by.actorId, signedAt: by.at, note: null });
    insertClassLogRemark(s.db, {
      ...by,
      sessionId: "1".padStart(32, "0"),
      kind: "coach",
      coachId: "marta",
      reason: null,
    });
  });
}
