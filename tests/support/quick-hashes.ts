/**
 * Hashing a password takes a tenth of a second of a processor, as it must where somebody may have stolen the hashes. Tests that
 * sign many people in do not wait for it: each hash is made with less work, after a look at how much work the program
 * asked for. Hashes made at the full cost are what the real servers of `sync` and `browser` use.
 */
import crypto from "node:crypto";
import { syncBuiltinESMExports } from "node:module";

/** What the sign-in library asks of scrypt (RFC 7914): no version of it may ask for less unnoticed. */
const LEAST = { N: 16_384, r: 16 };
const QUICK = { N: 16, r: 8, p: 1 };

const hashed = crypto.scrypt;

function quickly(...[password, salt, length, options, done]: Parameters<typeof crypto.scrypt>): void {
  const { N = 0, r = 0 } = options;
  if (N < LEAST.N || r < LEAST.r) throw new Error(`a password would be hashed with N=${N}, r=${r}`);
  hashed(password, salt, length, QUICK, done);
}

crypto.scrypt = quickly as typeof crypto.scrypt;
syncBuiltinESMExports();
