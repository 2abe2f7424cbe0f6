/** What people are told when something about people or their accounts is refused. */
import { fail, type Result } from "#server/base/result.ts";

export const STUDIO_EXISTS = fail(
  409,
  "studio-exists",
  "This studio is already set up. Sign in, or ask its manager for an invitation.",
);

export const WRONG_SET_UP_CODE = fail(
  403,
  "wrong-set-up-code",
  "This is not the set-up code. Read it on the console where the server was started; each start prints a new one.",
);

export const INVITATION_UNKNOWN = fail(
  404,
  "invitation-unknown",
  "This invitation link no longer works. Ask the manager for a new one.",
);

export const INVITATION_USED = fail(
  410,
  "invitation-used",
  "This invitation link has been used. Sign in, or ask the manager for a new one.",
);

export const INVITATION_REVOKED = fail(
  410,
  "invitation-revoked",
  "This invitation was cancelled. Ask the manager for a new one.",
);

export const INVITATION_MAKER_GONE = fail(
  410,
  "invitation-revoked",
  "The person who made this invitation can no longer invite people. Ask the manager for a new one.",
);

export const INVITATION_EXPIRED = fail(
  410,
  "invitation-expired",
  "This invitation link has expired. Ask the manager for a new one.",
);

export const ALREADY_HERE = fail(409, "already-here", "This address already has an account in this studio. Sign in.");

export const LAST_MANAGER = fail(
  409,
  "last-manager",
  "This is the studio's only manager. Make somebody else a manager first.",
);

export const NAME_NOT_TYPED = fail(
  409,
  "not-confirmed",
  "This is not the name of the account. Nothing was deleted: type the name as it stands above.",
);

export const DELETION_CHANGED = fail(
  409,
  "deletion-changed",
  "What would be deleted has changed meanwhile. Nothing was deleted: close this, open it again and read it once more.",
);

export const NOT_A_WRITER = fail(
  409,
  "not-a-writer",
  "The person who should get the plans cannot write plans, or has left. Nothing was deleted: choose somebody else.",
);

export const OWN_PASSWORD = fail(
  409,
  "own-password",
  "You cannot make a reset link for yourself. Change your password under your name, at the top of the page.",
);

export const RESET_UNKNOWN = fail(
  404,
  "reset-unknown",
  "This reset link no longer works. Ask a manager for a new one.",
);

export const RESET_USED = fail(
  410,
  "reset-used",
  "This reset link has been used. Sign in, or ask a manager for a new one.",
);

export const RESET_WITHDRAWN = fail(
  410,
  "reset-withdrawn",
  "This reset link was cancelled. Ask a manager for a new one.",
);

export const RESET_MAKER_GONE = fail(
  410,
  "reset-withdrawn",
  "The person who made this reset link is no longer a manager. Ask a manager for a new one.",
);

export const RESET_EXPIRED = fail(410, "reset-expired", "This reset link has expired. Ask a manager for a new one.");

/** For the manager who invites. */
export const addressTaken = (email: string): Result<never> =>
  fail(409, "already-here", `${email} already has an account in this studio. Use another address.`);
