/** Pairing codes: eight characters that are read off one screen and typed on another. */
import { randomBytes, randomInt } from "node:crypto";

/** No 0 O 1 I L U: nothing that looks like something else on a screen across a room. 30 signs. */
export const CODE_SIGNS = "23456789ABCDEFGHJKMNPQRSTVWXYZ";
export const CODE_LENGTH = 8;
export const CODE_LIVES_MS = 10 * 60_000;

/** A fresh code: one of 30^8, about 6.6 x 10^11. */
export const newPairingCode = (): string =>
  Array.from({ length: CODE_LENGTH }, () => CODE_SIGNS[randomInt(CODE_SIGNS.length)]).join("");

/** As people type it: small letters, spaces and hyphens are forgiven. Null when it cannot be a code. */
export function readPairingCode(typed: string): string | null {
  const code = typed.toUpperCase().replace(/[\s-]/g, "");
  return code.length === CODE_LENGTH && [...code].every((sign) => CODE_SIGNS.includes(sign)) ? code : null;
}

/** A device's token: 256 random bits, base64url. */
export const newDeviceToken = (): string => randomBytes(32).toString("base64url");
