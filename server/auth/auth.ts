/**
 * The sign-in library, set up for one studio: e-mail and password only, no public sign-up. Accounts are made by
 * `server/people/create-account.ts` alone; which of the library's paths answer the world is decided in `paths.ts`.
 */
import { betterAuth } from "better-auth";
import { drizzleAdapter } from "better-auth/adapters/drizzle";
import { organization } from "better-auth/plugins";
import { createAccessControl } from "better-auth/plugins/access";
import {
  account,
  invitation,
  member,
  session,
  organization as studioRow,
  user,
  verification,
} from "#db/auth-schema.ts";
import type { Db } from "#db/connection.ts";
import { ROLES } from "#lib/policy/can.ts";
import type { Env } from "#server/env.ts";
import type { Log } from "#server/log.ts";

export const PASSWORD_LENGTH = { min: 10, max: 128 } as const;
const DAY = 24 * 60 * 60;
/** A session ends after this many seconds without use. */
export const SESSION_SECONDS = 14 * DAY;
/** Set by our own server from the connection, after the client's header of that name is dropped. */
export const CLIENT_ADDRESS_HEADER = "x-springline-client";

export type Auth = ReturnType<typeof createAuth>;

/** Rights are lib/policy's: inside the library every role may do nothing at all. */
const access = createAccessControl({ studio: ["none"] });
const powerless = Object.fromEntries(ROLES.map((role) => [role, access.newRole({ studio: [] })]));

export function createAuth(db: Db, env: Pick<Env, "origin" | "secret">, log: Log) {
  return betterAuth({
    appName: "Springline",
    baseURL: env.origin,
    basePath: "/api/auth",
    secret: env.secret,
    trustedOrigins: [env.origin],
    telemetry: { enabled: false },
    // A wrong password is no fault of the server's: the library's warnings are ours to read when looking for something.
    logger: {
      level: "warn",
      disableColors: true,
      log: (level, message) => log[level === "error" ? "error" : "debug"](message),
    },
    database: drizzleAdapter(db.orm, {
      provider: "sqlite",
      schema: { user, session, account, verification, organization: studioRow, member, invitation },
    }),
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      minPasswordLength: PASSWORD_LENGTH.min,
      maxPasswordLength: PASSWORD_LENGTH.max,
    },
    session: { expiresIn: SESSION_SECONDS, updateAge: DAY, cookieCache: { enabled: false } },
    // It counts right sign-ins too, and by address alone: `guess-limit.ts` counts instead.
    rateLimit: { enabled: false },
    advanced: {
      cookiePrefix: "springline",
      useSecureCookies: env.origin.startsWith("https://"),
      defaultCookieAttributes: { httpOnly: true, sameSite: "lax" },
      ipAddress: { ipAddressHeaders: [CLIENT_ADDRESS_HEADER] },
    },
    plugins: [organization({ ac: access, roles: powerless, allowUserToCreateOrganization: false })],
  });
}
