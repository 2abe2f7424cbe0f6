/** What the mail server said, in words for the manager, and whether trying again can help. */

export interface MailProblem {
  /** One sentence or two. */
  readonly says: string;
  /** `message`: this mail was refused for good. `later`: it may go later. `server`: no mail can go at the moment. */
  readonly kind: "message" | "later" | "server";
}

const ANSWER_MAX = 120;
/** Of what this program says itself. */
const OWN_MAX = 400;

/** As errors of nodemailer, Node's sockets and TLS come. */
interface SendError {
  /** nodemailer's own. */
  readonly code?: unknown;
  /** The system's or TLS's, where there is one. */
  readonly originalCode?: unknown;
  readonly responseCode?: unknown;
  readonly response?: unknown;
  /** What the mail server refused: "RCPT TO". */
  readonly command?: unknown;
  readonly message?: unknown;
}

const WORDS: Readonly<Record<string, string>> = {
  EAUTH: "The mail server did not accept the user name and password.",
  ENOAUTH: "The mail server asks for a user name and password.",
  EDNS: "The mail server's name cannot be looked up. Check the name.",
  ENOTFOUND: "The mail server's name does not exist. Check the name.",
  ECONNREFUSED: "No mail server is listening at this name and port.",
  ETIMEDOUT: "The mail server did not answer in time.",
  ECONNECTION: "The connection to the mail server broke.",
  ECONNRESET: "The connection to the mail server broke.",
  ESOCKET: "The connection to the mail server broke.",
  ETLS: "The connection could not be encrypted as the settings ask. Try the other kind of security, or the other port.",
  DEPTH_ZERO_SELF_SIGNED_CERT: "The mail server's certificate is self-signed, so it is not trusted.",
  SELF_SIGNED_CERT_IN_CHAIN: "The mail server's certificate is signed by nobody that this machine trusts.",
  UNABLE_TO_VERIFY_LEAF_SIGNATURE: "The mail server's certificate is signed by nobody that this machine trusts.",
  CERT_HAS_EXPIRED: "The mail server's certificate has expired.",
  ERR_TLS_CERT_ALTNAME_INVALID: "The mail server's certificate is for another name.",
};

const NO_SMTP = "What answers at this name and port is no mail server.";

/** The wrong moment, and what RFC 4954, 6, says about signing in: nothing that is wrong with the mail. */
const OF_SETTINGS: ReadonlySet<number> = new Set([503, 530, 534, 535, 538]);

/** The reply in one line of printable characters: it is a stranger's text. */
const printable = (text: string, most: number): string =>
  text
    .replace(/[^\P{C}]+/gu, " ")
    .replace(/\s+/g, " ")
    .trim()
    .slice(0, most);

/**
 * The last line of an SMTP reply, shortened; undefined for anything else. The name and port are a manager's choice: what
 * some other service of the machine answers there is nobody's to read (RFC 5321, 4.2: three digits, then a space or the end).
 */
export function statusLine(reply: string): string | undefined {
  const last = reply.split(/\r?\n/).findLast((line) => /^[2-5][0-5][0-9](?:[ -]|$)/.test(line));
  return last === undefined ? undefined : printable(last, ANSWER_MAX);
}

/**
 * By RFC 5321, 4.2.1, a reply 5yz to a mail means that the same mail will be refused again; 4yz that it may go later. A
 * refused sign-in or sender is a matter of the settings, so no mail is given up for it at once. `secret` never shows, should a server
 * repeat it.
 */
export function mailProblem(error: unknown, secret: string | null = null): MailProblem {
  const { code, originalCode, responseCode, response, command, message } = (
    typeof error === "object" && error !== null ? error : {}
  ) as SendError;
  const known = WORDS[String(originalCode)] ?? WORDS[String(code)];
  const answered = typeof response === "string" ? statusLine(response) : undefined;
  const other = response === undefined && typeof message === "string" ? printable(message, OWN_MAX) : NO_SMTP;
  const said =
    answered === undefined ? (known ?? other) : `${known ? `${known} It` : "The mail server"} said: ${answered}`;
  const says = secret ? said.replaceAll(secret, "…") : said;
  const aboutMail = (code === "EENVELOPE" || code === "EMESSAGE") && command !== "MAIL FROM";
  const reply = typeof responseCode === "number" ? responseCode : 500;
  if (!aboutMail || OF_SETTINGS.has(reply)) return { says, kind: "server" };
  return { says, kind: reply >= 500 ? "message" : "later" };
}
