/** The doctor's checks of the public address: is it set, does it lead here, does it carry sockets, who counts as whom. */

import { PROXY_SECTION } from "#lib/protocol/address.ts";
import type { DataLocation } from "#server/base/env.ts";
import { type AddressReply, openSocket, requestAddress, type SocketEnd } from "./ask.ts";
import { type Diagnosis, right, unsure, wrong } from "./finding.ts";

const README = `See "${PROXY_SECTION}" in README.md.`;
/** Kept for documentation (RFC 5737): no real client has it. */
const INVENTED_CLIENT = "192.0.2.123";

export interface Reached {
  /** The setting itself. */
  readonly setting: Diagnosis;
  readonly asked: AddressReply;
  /** Leads to this installation: what needs that can be looked at. */
  readonly isHere: boolean;
  readonly address: Diagnosis;
}

export interface Setting extends Pick<DataLocation, "origin" | "originGiven"> {
  /** As it was typed. */
  readonly given: string | undefined;
  /** Where the server listens for others too. */
  readonly host: string;
  /** Undefined without a secret: there has been no server yet. */
  readonly id: string | undefined;
  readonly running: boolean;
}

export async function reach(set: Setting): Promise<Reached> {
  const asked = await requestAddress(set.origin);
  const isHere = asked.kind === "answer" && asked.answer.server === set.id;
  return { setting: settingOf(set), asked, isHere, address: addressOf(set, asked) };
}

function settingOf({ given, origin, originGiven, host }: Setting): Diagnosis {
  const what = "public address";
  if (!originGiven) {
    const only = `SPRINGLINE_URL is not set: people use ${origin}`;
    if (host === "127.0.0.1" || host === "localhost" || host === "::1")
      return unsure(what, `${only}, on this machine alone. Set it when there is a proxy in front.`);
    return wrong(what, `${only}, which works on this machine alone.`, "Set SPRINGLINE_URL to the address people type.");
  }
  const { pathname, search, hash, protocol, hostname } = new URL(given ?? origin);
  if (pathname !== "/" || search !== "" || hash !== "")
    return wrong(what, `SPRINGLINE_URL is ${given}.`, `Give Springline a name of its own, and set it to ${origin}.`);
  if (protocol === "http:" && !["localhost", "127.0.0.1", "[::1]"].includes(hostname))
    return wrong(what, `${origin} is not encrypted.`, `Put TLS in front and set SPRINGLINE_URL to https://. ${README}`);
  return right(what, `SPRINGLINE_URL is ${origin}.`);
}

const START = "Start the server and run this again: this check needs it running.";

function addressOf({ origin, id, running }: Setting, asked: AddressReply): Diagnosis {
  const what = "leads here";
  switch (asked.kind) {
    case "nothing":
      if (!running) return unsure(what, `${origin} does not answer (${asked.why}), nor does the server run. ${START}`);
      return wrong(
        what,
        `${origin} does not answer: ${asked.why}. The server runs.`,
        `Look at name, firewall, proxy and certificate. ${README}`,
      );
    case "redirect":
      return wrong(what, `${origin} sends to ${asked.to}.`, `Set SPRINGLINE_URL=${asked.to} if that is this studio.`);
    case "other":
      if (!running) return unsure(what, `${origin} answers ${asked.status}; the server does not run. ${START}`);
      return wrong(
        what,
        `What answers at ${origin} is not Springline (status ${asked.status}).`,
        `Let the proxy hand every path on to this server. ${README}`,
      );
    case "answer":
      if (asked.answer.server !== id)
        return wrong(
          what,
          `${origin} is a Springline with another secret.`,
          "Set SPRINGLINE_DATA and SPRINGLINE_SECRET here as that server has them, or lead the address to this one.",
        );
      if (asked.answer.address !== origin)
        return wrong(
          what,
          `The server that answers was started with ${asked.answer.address}; here it is ${origin}.`,
          "Start the server again with SPRINGLINE_URL as it is here.",
        );
      return right(what, `${origin} answers, and it is this server.`);
  }
}

export async function liveFinding(origin: string, { isHere, asked }: Reached): Promise<Diagnosis> {
  const what = "live connections";
  if (!isHere || asked.kind !== "answer")
    return unsure(what, "not looked at: needs the server running, and the address to lead to it.");
  const end = await openSocket(origin);
  if (end.kind === "opened") return right(what, "a WebSocket opens through the public address.");
  const carry = `Let the proxy carry upgrades on. ${README}`;
  if (end.kind === "failed") return wrong(what, `a WebSocket does not open: ${end.why}.`, carry);
  const byName = ofServersName(end, { origin, started: asked.answer.address });
  if (byName) return wrong(what, ...byName);
  if (end.status === 403)
    return wrong(
      what,
      "the server refused the WebSocket (status 403): the page's origin arrives changed.",
      `Let the proxy hand the Origin header on as it is. ${README}`,
    );
  if (end.status === 503)
    return unsure(what, "the server takes no more WebSockets at this moment (status 503). Run this again later.");
  return wrong(what, `a WebSocket was answered with status ${end.status} instead of 101.`, carry);
}

/**
 * The server answers by its own name alone: what comes from a page of another is refused, what comes asking for another is
 * sent on to it. Found and to do, where such an answer came; undefined where it is of another cause.
 */
function ofServersName(
  { status, to }: SocketEnd & { readonly kind: "status" },
  { origin, started }: { readonly origin: string; readonly started: string },
): [found: string, todo: string] | undefined {
  if (started !== origin && (status === 403 || to === started))
    return [
      `the server turns WebSockets of ${origin} away (status ${status}), since it was started with ${started}.`,
      `Start it again with SPRINGLINE_URL=${origin}, then run this again.`,
    ];
  if (to !== started) return undefined;
  return [
    `the server sent the WebSocket on to its own name, ${started} (status ${status}): what the proxy asks for names another Host and is no upgrade.`,
    `Let the proxy hand the Host header on as it is, and carry upgrades on. ${README}`,
  ];
}

/** Asked twice: once as anybody, once with a client's address that we made up, which no good proxy lets through. */
export async function proxyFinding(origin: string, { isHere, asked }: Reached): Promise<Diagnosis> {
  const what = "proxy";
  if (!isHere || asked.kind !== "answer")
    return unsure(what, "not looked at: needs the server running, and the address to lead to it.");
  const forged = await requestAddress(origin, { "x-forwarded-for": INVENTED_CLIENT });
  if (forged.kind !== "answer") return unsure(what, "the server did not answer a second time. Run this again.");
  const { forwarded } = asked.answer;
  if (forwarded === "ignored")
    return wrong(
      what,
      "a proxy names its clients (x-forwarded-for) and is not believed: all of them share the limits of one address.",
      "If the proxy is yours, start the server with SPRINGLINE_TRUST_PROXY=1.",
    );
  if (forged.answer.client === INVENTED_CLIENT)
    return wrong(
      what,
      "whoever asks can claim any address: an x-forwarded-for that we made up was believed.",
      forwarded === "none"
        ? `Let the proxy set x-forwarded-for; without a proxy, take SPRINGLINE_TRUST_PROXY away. ${README}`
        : `Let the proxy add the client's address last, or replace the header. ${README}`,
    );
  return forwarded === "believed"
    ? right(what, `it names its clients and is believed; this machine counts as ${asked.answer.client}.`)
    : right(what, "none that names its clients, and none is trusted.");
}
