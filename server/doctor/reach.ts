/** The doctor's checks of the public address: is it set, does it lead here, does it carry sockets, is the proxy trusted. */

import { type AddressAnswer, PROXY_SECTION } from "#lib/protocol/address.ts";
import type { DataLocation } from "#server/base/env.ts";
import { type AddressReply, openSocket, requestAddress, type SocketEnd } from "./ask.ts";
import { type Diagnosis, right, unsure, wrong } from "./finding.ts";

const README = `See "${PROXY_SECTION}" in README.md.`;
/** Reserved for documentation (RFC 5737): no real client has it. */
const INVENTED_CLIENT = "192.0.2.123";

export interface Reached {
  /** The check of the setting itself. */
  readonly setting: Diagnosis;
  readonly asked: AddressReply;
  /** The address leads to this installation, so the checks that need it can run. */
  readonly isHere: boolean;
  readonly address: Diagnosis;
}

export interface ReachSetting extends Pick<DataLocation, "origin" | "originGiven"> {
  /** The setting as it was typed. */
  readonly given: string | undefined;
  /** The address that the server listens on. */
  readonly host: string;
  /** Undefined without a secret: there has been no server yet. */
  readonly id: string | undefined;
  readonly running: boolean;
}

export async function reach(set: ReachSetting): Promise<Reached> {
  const asked = await requestAddress(set.origin);
  const isHere = asked.kind === "answer" && asked.answer.server === set.id;
  return { setting: settingOf(set), asked, isHere, address: addressOf(set, asked) };
}

function settingOf({ given, origin, originGiven, host }: ReachSetting): Diagnosis {
  const what = "public address";
  if (!originGiven) {
    const only = `SPRINGLINE_URL is not set: people use ${origin}`;
    if (host === "127.0.0.1" || host === "localhost" || host === "::1")
      return unsure(what, `${only}, on this machine only. Set it if there is a proxy in front of the server.`);
    return wrong(
      what,
      `${only}, which only works on this machine.`,
      "Set SPRINGLINE_URL to the address that people open.",
    );
  }
  const { pathname, search, hash, protocol, hostname } = new URL(given ?? origin);
  if (pathname !== "/" || search !== "" || hash !== "")
    return wrong(
      what,
      `SPRINGLINE_URL is ${given}.`,
      `Springline needs a host name of its own: set SPRINGLINE_URL to ${origin}.`,
    );
  if (protocol === "http:" && !["localhost", "127.0.0.1", "[::1]"].includes(hostname))
    return wrong(
      what,
      `${origin} is not encrypted.`,
      `Put a proxy with TLS in front and set SPRINGLINE_URL to https://. ${README}`,
    );
  return right(what, `SPRINGLINE_URL is ${origin}.`);
}

const START = "Start the server and run the doctor again.";

function addressOf({ origin, originGiven, id, running }: ReachSetting, asked: AddressReply): Diagnosis {
  const what = "leads here";
  switch (asked.kind) {
    case "nothing":
      if (!running)
        return unsure(what, `${origin} does not answer (${asked.why}), and the server is not running. ${START}`);
      if (!originGiven)
        return wrong(
          what,
          `the server of this data folder is running, but not at ${origin} (${asked.why}).`,
          "Run the doctor with the settings that the server was started with, PORT and SPRINGLINE_URL above all.",
        );
      return wrong(
        what,
        `${origin} does not answer (${asked.why}), although the server is running.`,
        `Check its DNS name, firewall, proxy and certificate. ${README}`,
      );
    case "redirect":
      return wrong(
        what,
        `${origin} redirects to ${asked.to}.`,
        `Set SPRINGLINE_URL=${asked.to} if that is this studio.`,
      );
    case "other":
      if (!running)
        return unsure(what, `${origin} answers with status ${asked.status}; the server is not running. ${START}`);
      return wrong(
        what,
        `What answers at ${origin} is not Springline (status ${asked.status}).`,
        `Configure the proxy to pass every path to this server. ${README}`,
      );
    case "answer":
      return answeringServer({ origin, id }, asked.answer);
  }
}

/** Springline answers: is it this server, and started with this address? */
function answeringServer({ origin, id }: Pick<ReachSetting, "origin" | "id">, answer: AddressAnswer): Diagnosis {
  const what = "leads here";
  if (answer.server !== id)
    return wrong(
      what,
      `${origin} is a Springline server with another secret.`,
      "Set SPRINGLINE_DATA and SPRINGLINE_SECRET as that server has them, or point the address to this server.",
    );
  if (answer.address !== origin)
    return wrong(
      what,
      `The server was started with SPRINGLINE_URL=${answer.address}; here it is ${origin}.`,
      "Restart the server with the SPRINGLINE_URL that is set here.",
    );
  return right(what, `${origin} leads to this server.`);
}

export async function liveFinding(origin: string, { isHere, asked }: Reached): Promise<Diagnosis> {
  const what = "live connections";
  if (!isHere || asked.kind !== "answer")
    return unsure(what, "not checked: the server has to be running, and the address has to lead to it.");
  const end = await openSocket(origin);
  if (end.kind === "opened") return right(what, "a WebSocket opens through the public address.");
  const carry = `Configure the proxy to pass WebSocket upgrades on. ${README}`;
  if (end.kind === "failed") return wrong(what, `a WebSocket does not open: ${end.why}.`, carry);
  const byName = ofServersName(end, { origin, started: asked.answer.address });
  if (byName) return wrong(what, ...byName);
  if (end.status === 403)
    return wrong(
      what,
      "the server refused the WebSocket (status 403), because the proxy changes the page's origin.",
      `Configure the proxy to pass the Origin header on unchanged. ${README}`,
    );
  if (end.status === 503)
    return unsure(
      what,
      "the server accepts no more WebSockets at the moment (status 503). Run the doctor again later.",
    );
  return wrong(what, `a WebSocket was answered with status ${end.status} instead of 101.`, carry);
}

/**
 * The server answers under its own name only: it refuses sockets of pages with another origin, and redirects requests for
 * another host. Gives what was found and what to do if that is the cause of this answer.
 */
function ofServersName(
  { status, to }: SocketEnd & { readonly kind: "status" },
  { origin, started }: { readonly origin: string; readonly started: string },
): [found: string, todo: string] | undefined {
  if (started !== origin && (status === 403 || to === started))
    return [
      `the server refuses WebSockets of ${origin} (status ${status}), because it was started with ${started}.`,
      `Restart it with SPRINGLINE_URL=${origin}, then run the doctor again.`,
    ];
  if (to !== started) return undefined;
  return [
    `the server redirected the WebSocket to its own name, ${started} (status ${status}): the proxy sends another Host and no upgrade.`,
    `Configure the proxy to pass the Host header and WebSocket upgrades on unchanged. ${README}`,
  ];
}

/** Asks twice: once normally, once with an invented client address, which a correct proxy does not let through. */
export async function proxyFinding(origin: string, { isHere, asked }: Reached): Promise<Diagnosis> {
  const what = "proxy";
  if (!isHere || asked.kind !== "answer")
    return unsure(what, "not checked: the server has to be running, and the address has to lead to it.");
  const forged = await requestAddress(origin, { "x-forwarded-for": INVENTED_CLIENT });
  if (forged.kind !== "answer") return unsure(what, "the server did not answer a second time. Run the doctor again.");
  const { forwarded } = asked.answer;
  if (forwarded === "ignored")
    return wrong(
      what,
      "a proxy names its clients (x-forwarded-for) but is not trusted: all clients share the limits of one address.",
      "If the proxy is yours, restart the server with SPRINGLINE_TRUST_PROXY=1.",
    );
  if (forged.answer.client === INVENTED_CLIENT)
    return wrong(
      what,
      "clients can claim any address: an invented x-forwarded-for was accepted.",
      forwarded === "none"
        ? `Configure the proxy to set x-forwarded-for; without a proxy, unset SPRINGLINE_TRUST_PROXY. ${README}`
        : `Configure the proxy to add the client's address last, or to replace the header. ${README}`,
    );
  return forwarded === "believed"
    ? right(what, `it names its clients and is trusted; this machine counts as ${asked.answer.client}.`)
    : right(what, "no proxy names its clients, and none is trusted.");
}
