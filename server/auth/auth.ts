/**
 * The sign-in library, set up for one studio: email and password only, no public sign-up. Accounts are created by the first
 * run and by invitations (`server/people`); which of the library's own paths are served is decided in
 * `server/people/auth-routes.ts`.
 */
import { betterAuth } from "better-auth";
import { drizzleAdapter } from "better-auth/adapters/drizzle";
import { organization } from "better-auth/plugins";
import { createAccessControl } from "better-auth/plugins/access";
import {
  accountTable,
  invitationTable,
  memberTable,
  organizationTable,
  sessionTable,
  userTable,
  verificationTable,
} from "#db/auth-schema.ts";
import type { Db } from "#db/connection.ts";
import { ROLES } from "#lib/policy/can.ts";
import type { Env } from "#server/base/env.ts";
import type { Log } from "#server/base/log.ts";
import { CLIENT_ADDRESS_HEADER } from "#server/limits/network.ts";

export const PASSWORD_LENGTH = { min: 10, max: 128 } as const;
const DAY = 24 * 60 * 60;
/** A session ends after this many seconds without use. */
const SESSION_SECONDS = 14 * DAY;

export type Auth = ReturnType<typeof createAuth>;

/** Our tables under the library's names. */
const TABLES = {
  user: userTable,
  session: sessionTable,
  account: accountTable,
  verification: verificationTable,
  organization: organizationTable,
  member: memberTable,
  invitation: invitationTable,
};

/** Rights are decided by `lib/policy`: inside the library no role may do anything. */
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
    // A wrong password is not a fault of the server: the library's warnings only appear at debug level.
    logger: {
      level: "warn",
      disableColors: true,
      log: (level, message) => log[level === "error" ? "error" : "debug"](message),
    },
    database: drizzleAdapter(db.orm, {
      provider: "sqlite",
      schema: TABLES,
    }),
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      minPasswordLength: PASSWORD_LENGTH.min,
      maxPasswordLength: PASSWORD_LENGTH.max,
    },
    session: { expiresIn: SESSION_SECONDS, updateAge: DAY, cookieCache: { enabled: false } },
    // It also counts successful sign-ins, and by address only: `guess-limit.ts` does the counting.
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
