/** One mail over the wire to a real SMTP server: how it is encrypted, who signs in, and what a refusal is in words. */

import { afterEach, describe, expect, test } from "vitest";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { mailProblem, statusLine } from "#server/mail/mail-problem.ts";
import type { MailSettings } from "#server/mail/mail-settings.ts";
import { type SmtpOptions, sendMail } from "#server/mail/smtp.ts";
import { writeTestMail } from "#server/mail/write-mail.ts";
import {
  type MailServer,
  type MailServerSetup,
  startMailServer,
  startSilentServer,
} from "#tests/support/mail-server.ts";
import { settingsFor } from "#tests/support/mail-studio.ts";

const stops: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const stop of stops.splice(0)) await stop();
});
async function start(setup: MailServerSetup = {}): Promise<MailServer> {
  const server = await startMailServer(setup);
  stops.push(server.stop);
  return server;
}
const NOW = Date.UTC(2026, 10, 30, 7, 30);
const letter = {
  id: "mail-1",
  studioName: "Tholepin Strength",
  formats: { ...STANDARD_FORMATS, zone: "Europe/London" },
  now: NOW,
};
const to = { name: "Petra Lund", address: "petra@tholepin.example" };
const post = (server: Pick<MailServer, "port">, change: Partial<MailSettings>, options: SmtpOptions) => {
  const settings = settingsFor(server, change);
  return sendMail(settings, writeTestMail(settings, { ...letter, to }), { waitMs: 1500, ...options });
};
const refusedWith = async (sending: Promise<unknown>, secret?: string) => {
  try {
    await sending;
  } catch (error) {
    return mailProblem(error, secret ?? null);
  }
  throw new Error("the mail was taken");
};

describe("encryption", () => {
  test("STARTTLS (RFC 3207) with a certificate that is trusted", async () => {
    const server = await start();
    expect(await post(server, {}, { ca: server.ca })).toMatch(/^250 /);
    expect(server.arrived).toMatchObject([{ encrypted: true, from: "studio@tholepin.example", to: [to.address] }]);
  });

  test("TLS from the first byte (RFC 8314)", async () => {
    const server = await start({ tls: true });
    expect(await post(server, { security: "tls" }, { ca: server.ca })).toMatch(/^250 /);
    expect(server.arrived[0]?.encrypted).toBe(true);
  });

  test("a certificate that nobody trusts is refused, for STARTTLS and for TLS, and nothing is sent", async () => {
    for (const tls of [false, true]) {
      const server = await start({ tls });
      const problem = await refusedWith(post(server, { security: tls ? "tls" : "starttls" }, {}));
      expect(problem).toEqual({ kind: "server", says: expect.stringContaining("self-signed") });
      expect(server.arrived).toEqual([]);
    }
  });

  test("a certificate for another name is refused", async () => {
    const { selfSigned } = await import("#tests/support/self-signed.ts");
    const server = await start({ certificate: selfSigned("elsewhere.example") });
    const problem = await refusedWith(post(server, {}, { ca: server.ca }));
    expect(problem.says).toContain("for another name");
  });

  test("where STARTTLS is asked for and not offered, neither the password nor the mail is sent in the clear", async () => {
    const server = await start({ plain: true, user: { name: "studio", password: "kelp-and-rope-9" } });
    const problem = await refusedWith(post(server, { user: "studio", password: "kelp-and-rope-9" }, {}));
    expect(problem.kind).toBe("server");
    expect(problem.says).toContain("could not be encrypted");
    expect(server.arrived).toEqual([]);
  });

  test("none, to this machine alone", async () => {
    const server = await start({ plain: true });
    expect(await post(server, { security: "none" }, {})).toMatch(/^250 /);
    expect(server.arrived[0]?.encrypted).toBe(false);
  });
});

describe("signing in (RFC 4954)", () => {
  const user = { name: "studio", password: "kelp-and-rope-9" };

  test("with the right password", async () => {
    const server = await start({ user });
    await post(server, { user: user.name, password: user.password }, { ca: server.ca });
    expect(server.arrived[0]?.user).toBe("studio");
  });

  test("with a wrong one: a matter of the settings, in words, without the password", async () => {
    const server = await start({ user });
    const sending = post(server, { user: user.name, password: "wrong-one" }, { ca: server.ca });
    const problem = await refusedWith(sending, "wrong-one");
    expect(problem.kind).toBe("server");
    expect(problem.says).toContain("did not accept the user name and password");
    expect(problem.says).toContain("535");
    expect(problem.says).not.toContain("wrong-one");
  });

  test("without one, where the server asks for it (530): no mail is given up for that", async () => {
    const server = await start({ user });
    expect(await refusedWith(post(server, {}, { ca: server.ca }))).toMatchObject({ kind: "server" });
  });
});

describe("refusals (RFC 5321, 4.2.1)", () => {
  test("550 to the recipient, and 552 after the text, are for good; 451 and 421 may pass", async () => {
    const server = await start();
    const cases = [
      [{ at: "rcpt", code: 550, says: "5.1.1 No such person here" }, "message"],
      [{ at: "data", code: 552, says: "5.2.2 Mailbox full" }, "message"],
      [{ at: "rcpt", code: 451, says: "4.3.0 Try later" }, "later"],
      [{ at: "data", code: 451, says: "4.7.1 Greylisted" }, "later"],
      [{ at: "mail", code: 553, says: "5.1.8 Sender not allowed" }, "server"],
    ] as const;
    for (const [conduct, kind] of cases) {
      server.next.push(conduct);
      const problem = await refusedWith(post(server, {}, { ca: server.ca }));
      expect(problem.kind).toBe(kind);
      expect(problem.says).toContain(conduct.says);
      expect(problem.says).toContain(String(conduct.code));
    }
    expect(server.arrived).toEqual([]);
  });

  test("a connection that is cut within the text", async () => {
    const server = await start();
    server.next.push({ at: "data", cut: "midway" });
    const problem = await refusedWith(post(server, {}, { ca: server.ca }));
    expect(problem.kind).not.toBe("message");
    expect(server.arrived).toEqual([]);
  });

  test("a server that hangs, at once or after the text, is given up in time", async () => {
    const silent = await startSilentServer();
    stops.push(silent.stop);
    const begun = performance.now();
    expect((await refusedWith(post(silent, {}, { waitMs: 300 }))).says).toContain("did not answer in time");
    const server = await start();
    server.next.push({ at: "data", hang: true });
    expect((await refusedWith(post(server, {}, { ca: server.ca, waitMs: 300 }))).kind).not.toBe("message");
    expect(performance.now() - begun).toBeLessThan(10_000);
  });

  test("nobody is listening; the name does not exist", async () => {
    const server = await start();
    const { port } = server;
    await server.stop();
    expect((await refusedWith(post({ port }, {}, {}))).says).toBe("No mail server is listening at this name and port.");
    const nowhere = await refusedWith(post({ port }, { host: "mail.nowhere.invalid" }, {}));
    expect(nowhere.kind).toBe("server");
    expect(nowhere.says).toMatch(/name|in time/);
  });

  test("what another service answers at this port is not shown; of a mail server's answer the status line is", () => {
    for (const response of [
      "SSH-2.0-server_9.6 key-of-the-house",
      "-ERR wrong number of arguments",
      "HTTP/1.1 400 Bad Request",
    ]) {
      const { says } = mailProblem({ code: "EPROTOCOL", response, message: `Invalid greeting. response=${response}` });
      expect(says).toBe("What answers at this name and port is no mail server.");
    }
    const { says } = mailProblem({
      code: "EENVELOPE",
      responseCode: 550,
      response: "550-5.1.1 Long story\r\n550 5.1.1 Nobody here",
    });
    expect(says).toBe("The mail server said: 550 5.1.1 Nobody here");
    expect(statusLine("220 ready\r\nsecret: kelp")).toBe("220 ready");
  });

  test("a stranger's answer is one printable line of bounded length, and never repeats the password", () => {
    const response = `550 no\r\n\u001b[31mred\u202e kelp-and-rope-9 ${"x".repeat(5000)}`;
    const { says } = mailProblem({ code: "EENVELOPE", responseCode: 550, response }, "kelp-and-rope-9");
    expect(says).not.toMatch(/[\p{Cc}\u202e]/u);
    expect(says).not.toContain("kelp-and-rope-9");
    expect(says.length).toBeLessThan(400);
  });
});
