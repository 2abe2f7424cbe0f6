/** What everybody changes about their own account: the name, and the address with which they sign in. */
import * as z from "zod";
import { passwordHashOf, readPerson, setEmail, setName, userIdByEmail } from "#db/repos/people-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { dropOpenResetsOf } from "#db/repos/reset-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import type { Actor } from "#lib/policy/can.ts";
import { guessLimitOf } from "#server/auth/guess-limit.ts";
import { fail, NO_RIGHT, NOT_FOUND, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { emailAddress, personName } from "./fields.ts";
import { addressTaken } from "./refusals.ts";
import { refuseSameName } from "./same-name.ts";

export const ownNameSchema = z.strictObject({ name: personName });
export const ownEmailSchema = z.strictObject({
  email: emailAddress,
  /** The present password: an open page alone must not be enough to take an account over. */
  password: z.string().min(1, "Enter your password.").max(128),
});

/** Plans, comments and signatures show the new name from then on; signed editions are unchanged. Errors: 401, 403 for devices,
 * 409 name-taken. */
export function changeOwnName(
  app: Pick<Springline, "db" | "now">,
  actor: Actor,
  { name }: z.infer<typeof ownNameSchema>,
): Result<{ name: string }> {
  if (actor === null) return NOT_SIGNED_IN;
  if (actor.kind !== "person") return NO_RIGHT;
  const at = app.now();
  return inTransaction(app.db, (): Result<{ name: string }> => {
    const before = readPerson(app.db, actor.id)?.name;
    if (before === undefined) return NOT_FOUND;
    if (before === name) return ok({ name });
    const refused = refuseSameName(app.db, name, actor.id);
    if (refused) return refused;
    setName(app.db, actor.id, name, at);
    const entry = { at, actorId: actor.id, subject: `person/${actor.id}`, kind: "name-changed" };
    addToRecord(app.db, { ...entry, body: { name, before } });
    return ok({ name });
  });
}

/**
 * The new address signs in from then on, the old one no longer does. Wrong passwords count as they do at a change of password.
 * Errors: 401, 403 wrong-password, 409 already-here, 429 too-many-tries.
 */
export async function changeOwnEmail(
  app: Springline,
  actor: Actor,
  { email, password }: z.infer<typeof ownEmailSchema>,
): Promise<Result<{ email: string }>> {
  if (actor === null) return NOT_SIGNED_IN;
  if (actor.kind !== "person") return NO_RIGHT;
  const limit = guessLimitOf(app);
  const guessed = await limit.run(app, limit.ownPassword(actor.id), async () => {
    const right = await isOwnPassword(app, actor.id, password);
    return { verdict: right ? ("right" as const) : ("wrong" as const), value: right };
  });
  if (!guessed.ok) return guessed;
  if (!guessed.value) return WRONG_PASSWORD;
  const at = app.now();
  return app.db.raw
    .transaction((): Result<{ email: string }> => {
      const before = readPerson(app.db, actor.id)?.email;
      if (before === undefined) return NOT_FOUND;
      if (before === email) return ok({ email });
      // Somebody who has left keeps theirs, or an invitation would bring back the wrong person.
      if (userIdByEmail(app.db, email) !== undefined) return addressTaken(email);
      setEmail(app.db, actor.id, email, at);
      // One that went to the old address would let in whoever reads that.
      dropOpenResetsOf(app.db, actor.id);
      const entry = { at, actorId: actor.id, subject: `person/${actor.id}`, kind: "email-changed" };
      addToRecord(app.db, { ...entry, body: { email, before } });
      return ok({ email });
    })
    .immediate();
}

const WRONG_PASSWORD = fail(403, "wrong-password", "The password is wrong. Your address is unchanged: try again.");

async function isOwnPassword(app: Springline, userId: string, password: string): Promise<boolean> {
  const hash = passwordHashOf(app.db, userId);
  return hash !== undefined && (await app.auth.$context).password.verify({ hash, password });
}
