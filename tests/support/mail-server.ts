/** A real SMTP server on loopback, which takes mails, refuses them, cuts the connection or says nothing, as a test asks. */
import { createServer } from "node:net";
import { type ParsedMail, simpleParser } from "mailparser";
import { SMTPServer } from "smtp-server";
import { type SelfSigned, selfSigned } from "./self-signed.ts";

export interface Arrived {
  /** The envelope: RFC 5321, 2.3.1. */
  readonly from: string;
  readonly to: readonly string[];
  readonly encrypted: boolean;
  readonly user: string | undefined;
  readonly raw: string;
  readonly mail: ParsedMail;
}

/** What the server does with the next mails, one after the other; then it takes them. */
export type Conduct =
  | { readonly at: "mail" | "rcpt" | "data"; readonly code: number; readonly says: string }
  | { readonly at: "data"; readonly cut: "midway" | "before answering" }
  | { readonly at: "data"; readonly hang: true };

export interface MailServer {
  readonly port: number;
  /** The server's own certificate, PEM. */
  readonly ca: string;
  readonly arrived: Arrived[];
  readonly next: Conduct[];
  /** Called when a mail was kept, before the server answers. */
  onKept: () => void;
  stop(): Promise<void>;
}

export interface MailServerSetup {
  /** From the first byte (RFC 8314), instead of by STARTTLS (RFC 3207). */
  readonly tls?: boolean;
  /** Any free one when left out. */
  readonly port?: number;
  /** Offers no encryption at all. */
  readonly plain?: boolean;
  readonly user?: { readonly name: string; readonly password: string };
  readonly certificate?: SelfSigned;
}

const refusal = ({ code, says }: { code: number; says: string }) =>
  Object.assign(new Error(says), { responseCode: code });

export async function startMailServer(setup: MailServerSetup = {}): Promise<MailServer> {
  const certificate = setup.certificate ?? selfSigned();
  const arrived: Arrived[] = [];
  const next: Conduct[] = [];
  const refusesAt = (at: Conduct["at"]) => {
    const conduct = next[0];
    if (conduct?.at !== at || !("code" in conduct)) return null;
    next.shift();
    return refusal(conduct);
  };
  const server = new SMTPServer({
    secure: setup.tls === true,
    ...certificate,
    disabledCommands: [...(setup.plain ? ["STARTTLS"] : []), ...(setup.user ? [] : ["AUTH"])],
    authOptional: setup.user === undefined,
    disableReverseLookup: true,
    logger: false,
    onAuth({ username, password }, _session, done) {
      const good = username === setup.user?.name && password === setup.user?.password;
      if (good) done(null, { user: username ?? "" });
      else done(refusal({ code: 535, says: "5.7.8 Authentication credentials invalid" }));
    },
    onMailFrom: (_address, _session, done) => done(refusesAt("mail")),
    onRcptTo: (_address, _session, done) => done(refusesAt("rcpt")),
    onData(stream, session, done) {
      const conduct = next[0]?.at === "data" ? next.shift() : undefined;
      const drop = () => {
        for (const connection of server.connections) connection.close();
      };
      const parts: Buffer[] = [];
      stream.on("data", (part: Buffer) => {
        parts.push(part);
        if (conduct && "cut" in conduct && conduct.cut === "midway") drop();
      });
      stream.on("end", async () => {
        if (conduct && "code" in conduct) return done(refusal(conduct));
        if ((conduct && "hang" in conduct) || (conduct && "cut" in conduct && conduct.cut === "midway")) return;
        const raw = Buffer.concat(parts).toString("utf8");
        const { mailFrom, rcptTo } = session.envelope;
        arrived.push({
          from: mailFrom ? mailFrom.address : "",
          to: rcptTo.map(({ address }) => address),
          encrypted: session.secure === true,
          user: typeof session.user === "string" ? session.user : undefined,
          raw,
          mail: await simpleParser(raw),
        });
        made.onKept();
        if (conduct) drop();
        else done();
      });
    },
  });
  server.on("error", () => undefined);
  await new Promise<void>((resolve) => server.listen(setup.port ?? 0, "127.0.0.1", () => resolve()));
  const address = server.server.address();
  const made: MailServer = {
    port: typeof address === "object" && address ? address.port : 0,
    ca: certificate.cert,
    arrived,
    next,
    onKept: () => undefined,
    stop: () =>
      new Promise((resolve) => {
        for (const connection of server.connections) connection.close();
        server.close(() => resolve());
      }),
  };
  return made;
}

/** Accepts connections and never says a word. */
export async function startSilentServer(): Promise<{ readonly port: number; stop(): Promise<void> }> {
  const sockets = new Set<{ destroy(): unknown }>();
  const server = createServer((socket) => {
    sockets.add(socket);
    socket.on("error", () => undefined);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", () => resolve()));
  const address = server.address();
  return {
    port: typeof address === "object" && address ? address.port : 0,
    stop: () =>
      new Promise((resolve) => {
        for (const socket of sockets) socket.destroy();
        server.close(() => resolve());
      }),
  };
}
