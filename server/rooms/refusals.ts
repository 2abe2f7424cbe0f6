/** What managers are told when a change of a room is refused. */
import { fail, type Result } from "#server/base/result.ts";

export const SPRING_CHANGED = fail(
  409,
  "changed-meanwhile",
  "Somebody changed this spring or its readings while you had them open. Nothing was saved. Note what you typed and reload the page.",
);

export const MACHINES_CHANGED = fail(
  409,
  "changed-meanwhile",
  "Somebody changed this room's machines while you had it open. Nothing was saved. Note what you typed and reload the page.",
);

export const TAUGHT_TIMINGS_CHANGED = fail(
  409,
  "changed-meanwhile",
  "Another class has come in since, so the seconds have changed. Nothing was saved: look at the new seconds first.",
);

export const roomNameTaken = (name: string): Result<never> =>
  fail(409, "name-taken", `There is already a room called ${name}. Choose another name.`);
