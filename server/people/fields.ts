/** What a person types about people, checked: names, addresses, passwords and roles. */
import * as z from "zod";
import { ROLES, type Role } from "#lib/policy/can.ts";
import { PASSWORD_LENGTH } from "#server/auth/auth.ts";

export const personName = z.string().trim().min(1, "Give a name.").max(100, "That name is too long.");
/** Stored in lower case: the part after the @ never tells cases apart, and nobody means two people by two spellings. */
export const emailAddress = z
  .string()
  .trim()
  .toLowerCase()
  .pipe(z.email("That is not an e-mail address.").max(254, "That address is too long."));
export const newPassword = z
  .string()
  .min(PASSWORD_LENGTH.min, `A password needs at least ${PASSWORD_LENGTH.min} characters.`)
  .max(PASSWORD_LENGTH.max, `A password has at most ${PASSWORD_LENGTH.max} characters.`);
export const roleList = z
  .array(z.enum(ROLES, `A role is one of ${ROLES.join(", ")}.`))
  .min(1, "Choose at least one role.")
  .max(20)
  .transform((list): Role[] => ROLES.filter((role) => list.includes(role)));
