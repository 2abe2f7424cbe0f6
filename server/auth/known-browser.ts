/**
 * Recognises a browser that has signed in to an account before, by a cookie that outlives sessions: the owner of an account
 * then does not have to wait while strangers guess its password. The cookie gives no access. It holds a random name for
 * the browser and one mark per account that only this server can compute, and identifies nobody.
 */
import { createHmac, randomBytes, timingSafeEqual } from "node:crypto";
import type { Env } from "#server/base/env.ts";

type Setting = Pick<Env, "origin" | "secret">;

/** Without the prefix that browsers require of a secure cookie. */
const NAME = "springline.known_browser";
/** 400 days, the longest that browsers keep a cookie (RFC 6265bis); renewed with every sign-in. */
const SECONDS = 400 * 24 * 60 * 60;
/** Accounts per browser, enough for a tablet that a team shares; the one that signed in longest ago is dropped first. */
const MARKS = 24;
const PART = /^[\w-]{22}$/;

/** The browser's name if it has signed in to the account before. */
export function knownBrowser(setting: Setting, headers: Headers, userId: string): string | undefined {
  const { browser, marks } = readCookie(setting, headers);
  const right = markOf(setting, browser, userId);
  return marks.some((mark) => timingSafeEqual(Buffer.from(mark), Buffer.from(right))) ? browser : undefined;
}

/** The Set-Cookie value after somebody has signed in to the account from this browser. */
export function rememberBrowser(setting: Setting, headers: Headers, userId: string): string {
  const { browser, marks } = readCookie(setting, headers);
  const mark = markOf(setting, browser, userId);
  const kept = [mark, ...marks.filter((other) => other !== mark)].slice(0, MARKS);
  const secure = isSecure(setting) ? "; Secure" : "";
  const value = [browser, ...kept].join(".");
  return `${nameFor(setting)}=${value}; Max-Age=${SECONDS}; Path=/api; HttpOnly${secure}; SameSite=Lax`;
}

const isSecure = ({ origin }: Setting): boolean => origin.startsWith("https://");
const nameFor = (setting: Setting): string => `${isSecure(setting) ? "__Secure-" : ""}${NAME}`;

/** The browser's cookie; a new name and no marks when it has none that can be read. */
function readCookie(
  setting: Setting,
  headers: Headers,
): { readonly browser: string; readonly marks: readonly string[] } {
  const wanted = `${nameFor(setting)}=`;
  const cookies = (headers.get("cookie") ?? "").split(";").map((cookie) => cookie.trim());
  const value = cookies.find((cookie) => cookie.startsWith(wanted))?.slice(wanted.length) ?? "";
  const [browser = "", ...marks] = value.split(".");
  if (![browser, ...marks].every((part) => PART.test(part))) return { browser: randomName(), marks: [] };
  return { browser, marks: marks.slice(0, MARKS) };
}

/** 128 random bits in 22 characters. */
const randomName = (): string => randomBytes(16).toString("base64url");

function markOf({ secret }: Setting, browser: string, userId: string): string {
  const code = createHmac("sha256", secret).update(`known browser\0${browser}\0${userId}`).digest("base64url");
  return code.slice(0, 22);
}
