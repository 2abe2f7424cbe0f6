/** What people are told when something about a plan in writing is refused. */
import type { PlanState } from "#lib/protocol/messages.ts";
import { fail, type Result } from "#server/base/result.ts";

export const NO_SUCH_ROOM = fail(422, "no-such-room", "This room does not exist. Choose one of the studio's rooms.");

export const NO_ROOM_YET = fail(409, "no-room", "The studio has no room yet. Ask a manager to add one.");

export const WAS_SIGNED = fail(
  409,
  "was-signed",
  "This plan was signed off, so it cannot be deleted. Archive it instead; its editions stay on the devices until a lead withdraws them.",
);

/** For putting away a plan in this state: a lead may be reading it. */
export const handedInPlan = (state: PlanState, then: "archive" | "delete"): Result<never> =>
  fail(409, "wrong-state", `The plan is offered for reading. Take it back first, then ${then} it.`, { state });

export const NO_SUCH_PERSON = fail(422, "no-such-person", "This person is not in the studio. Choose somebody else.");

export const cannotWrite = (name: string): Result<never> =>
  fail(422, "cannot-write", `${name} cannot write plans in this studio. Choose somebody who can.`);

export const UNREADABLE_PLAN = fail(
  409,
  "not-a-file",
  "This plan contains something that the program cannot read. Undo the last change.",
);

export const UNCHECKED = fail(503, "unchecked", "The plan cannot be checked at the moment. Try again shortly.");

export const NOTHING_TO_REHEARSE = fail(
  409,
  "nothing-to-rehearse",
  "This plan has no move yet. Add one before you rehearse it.",
);

/** Why the plan is not a valid plan file. */
interface Fault {
  readonly pointer: string | null;
  readonly message: string;
}

export const cannotRehearse = (why: Fault): Result<never> =>
  fail(409, "not-a-file", `This plan cannot be rehearsed yet: ${why.message}`, why);

export const cannotExport = (why: Fault): Result<never> =>
  fail(
    409,
    "not-a-file",
    `This plan cannot be saved as a file yet, because something would be lost: ${why.message}`,
    why,
  );

export const badPlanFile = ({ pointer, message }: { readonly pointer: string; readonly message: string }) =>
  fail(422, "bad-plan-file", `This plan file cannot be read, so nothing was added: ${message}.`, { pointer, message });
