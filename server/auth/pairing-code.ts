/** Codes of eight characters, to be read off one screen and typed into another. */
import { randomBytes, randomInt } from "node:crypto";

/** 30 characters, without 0 O 1 I L U: none that is mistaken for another across a room. */
export const CODE_SIGNS = "23456789ABCDEFGHJKMNPQRSTVWXYZ";
export const CODE_LENGTH = 8;
export const CODE_LIVES_MS = 10 * 60_000;

/** A new code: one of 30^8, about 6.6 x 10^11. */
export const newPairingCode = (): string =>
  Array.from({ length: CODE_LENGTH }, () => CODE_SIGNS[randomInt(CODE_SIGNS.length)]).join("");

/** Reads a code as people type it: lower case, spaces and hyphens are fine. Null when it cannot be a code. */
export function readPairingCode(typed: string): string | null {
  const code = typed.toUpperCase().replace(/[\s-]/g, "");
  return code.length === CODE_LENGTH && [...code].every((sign) => CODE_SIGNS.includes(sign)) ? code : null;
}

/** A device's token: 256 random bits, base64url. */
export const newDeviceToken = (): string => randomBytes(32).toString("base64url");
