/** Checks what people type about people: names, addresses, passwords and roles. */
import * as z from "zod";
import { NO_ROLE, ROLES, type Role } from "#lib/policy/can.ts";
import { PASSWORD_LENGTH } from "#server/auth/auth.ts";
import { typedLine } from "#server/base/typed-text.ts";

export const studioName = typedLine
  .min(1, "Enter the studio's name.")
  .max(120, "A studio's name has at most 120 characters.");
/** May be empty. */
export const studioTown = typedLine.max(120, "A town has at most 120 characters.");
export const personName = typedLine.min(1, "Enter a name.").max(100, "A name has at most 100 characters.");
/** Stored in lower case: two spellings of an address never mean two people. */
export const emailAddress = z
  .string()
  .trim()
  .toLowerCase()
  .pipe(z.email("Enter an email address.").max(254, "An email address has at most 254 characters."));
export const PASSWORD_TOO_SHORT = `A password needs at least ${PASSWORD_LENGTH.min} characters.`;
export const PASSWORD_TOO_LONG = `A password has at most ${PASSWORD_LENGTH.max} characters.`;
export const newPassword = z
  .string()
  .min(PASSWORD_LENGTH.min, PASSWORD_TOO_SHORT)
  .max(PASSWORD_LENGTH.max, PASSWORD_TOO_LONG);
export const roleList = z
  .array(z.enum(ROLES, `A role is one of ${ROLES.join(", ")}.`))
  .min(1, NO_ROLE)
  .max(20)
  .transform((list): Role[] => ROLES.filter((role) => list.includes(role)));
