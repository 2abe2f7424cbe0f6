/** What people are told when something about a round of reading is refused. */
import { fail, type Result } from "#server/base/result.ts";

export const NOT_OFFERED = fail(
  409,
  "not-offered",
  "The plan is not offered for reading any more, so there is nothing to take up. Reload the page to see where it stands.",
);

export const NOT_YOURS_TO_LET_GO = fail(
  409,
  "not-reader",
  "Somebody else is reading this plan. Only they can let it go.",
);

interface BeingRead {
  readonly readerId: string;
  readonly reader: string | null;
  readonly since: number | null;
}

export const beingRead = (read: BeingRead): Result<never> =>
  fail(
    409,
    "being-read",
    `${read.reader ?? "Another lead"} is already reading this plan. Ask them, or take it over from them.`,
    read,
  );

export const NO_SUCH_POINT = fail(
  404,
  "not-found",
  "Nothing was kept of the plan here. Choose another point to compare with.",
);
