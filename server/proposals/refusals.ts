/** What people are told when a proposal cannot be made, taken, declined or withdrawn. */
import { fail, type Result } from "#server/base/result.ts";

export const TOO_MANY_OPEN = fail(
  409,
  "too-many-proposals",
  "This plan has as many open proposals as it can hold. Withdraw some first, or wait until some are answered.",
);

export const TOO_LARGE = fail(422, "too-large", "This proposal is too long to be stored. Propose fewer lines at once.");

export const SEVERAL_PLATES = fail(
  422,
  "several-items",
  "A proposal is about one item, or about the order of one block. Propose each by itself.",
);

export const NO_SUCH_PART = fail(
  422,
  "no-such-part",
  "This proposal does not have all of the parts that you chose. Reload the page and choose again.",
);

export const NOT_THE_PROPOSER = fail(
  403,
  "not-the-proposer",
  "Only the person who made a proposal can withdraw it. Decline it, or leave it to them.",
);

/** For a part that the stored plan does not fit. */
export const groundChanged = (why: string): Result<never> =>
  fail(
    409,
    "ground-changed",
    `The plan has changed while you wrote this proposal. ${why} Look at it again, then send it.`,
  );

export const takenBy = (name: string): Result<never> =>
  fail(
    409,
    "already-taken",
    `${name} has taken this proposal. Nothing of yours was written: look at the plate as it is now.`,
  );

export const beingTaken = (name: string): Result<never> =>
  fail(
    409,
    "being-taken",
    `${name} is taking this proposal just now. Nothing of yours was written: look at the plate, and try again in a minute if nothing has changed.`,
  );

export const BEING_TAKEN_BY_YOU = fail(
  409,
  "being-taken",
  "You are taking this proposal already, here or on another page. Look at the plate, and try again in a minute if nothing has changed.",
);

export const declinedBy = (name: string): Result<never> =>
  fail(409, "already-declined", `${name} has declined this proposal, so it is closed.`);

export const withdrawnBy = (name: string): Result<never> =>
  fail(409, "already-withdrawn", `${name} has withdrawn this proposal, so it is closed.`);
