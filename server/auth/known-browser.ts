/**
 * A browser that has signed in to an account before, told by a cookie of its own that outlives sessions: strangers who
 * guess at the account then cost its owner no waiting. It opens nothing. The cookie is a random name of the browser and,
 * for each account, a mark that only this server can make; it says of nobody who they are.
 */
import { createHmac, randomBytes, timingSafeEqual } from "node:crypto";
import type { Env } from "#server/base/env.ts";

type Setting = Pick<Env, "origin" | "secret">;

/** The name without the prefix that browsers ask for on a secure cookie. */
const NAME = "springline.known_browser";
/** The longest that browsers keep a cookie (RFC 6265bis): 400 days, begun anew with each signing in. */
const SECONDS = 400 * 24 * 60 * 60;
/** A tablet that a whole team shares; the account that signed in longest ago is forgotten first. */
const MARKS = 24;
const PART = /^[\w-]{22}$/;

/** The name of this browser when it has signed in to the account before, else undefined. */
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

/** What the browser brought; a fresh name and no marks when it brought nothing that can be read. */
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
