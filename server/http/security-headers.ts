/**
 * The headers of every answer. Scripts only run when they come from this server and carry the nonce of their answer. Next
 * reads the nonce from the policy header of the request and adds it to the scripts of a page.
 */
import type { IncomingMessage, ServerResponse } from "node:http";
import type { Env } from "#server/base/env.ts";

type Setting = Pick<Env, "mode" | "origin">;

/** Sets the headers on `response`, and on `request` the policy that Next reads. */
export function setSecurityHeaders(
  setting: Setting,
  request: IncomingMessage,
  response: ServerResponse,
  nonce: string,
): void {
  const policy = contentPolicy(setting, nonce);
  request.headers["content-security-policy"] = policy;
  const headers: Record<string, string> = {
    "content-security-policy": policy,
    "x-content-type-options": "nosniff",
    "x-frame-options": "DENY",
    "referrer-policy": "same-origin",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "screen-wake-lock=(self), camera=(), microphone=(), geolocation=(), payment=(), usb=()",
  };
  if (setting.origin.startsWith("https://")) headers["strict-transport-security"] = "max-age=31536000";
  for (const [name, value] of Object.entries(headers)) response.setHeader(name, value);
}

/**
 * Styles may be inline, for React's style attributes and the editor's own sheet. The socket is listed because older browsers
 * do not count ws: as 'self'. Development needs eval for its source maps.
 */
function contentPolicy({ mode, origin }: Setting, nonce: string): string {
  const dev = mode === "dev" ? " 'unsafe-eval'" : "";
  return [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}'${dev}`,
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self' data:",
    "media-src 'self' data: blob:",
    `connect-src 'self' ${origin.replace(/^http/, "ws")}`,
    "worker-src 'self' blob:",
    "manifest-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join("; ");
}
