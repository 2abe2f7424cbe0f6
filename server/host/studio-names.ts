/** Which names and addresses a studio on a host may have. */
import { HostRefused } from "./host-refused.ts";

/** Folders of a host that are no studio's. */
export const OWN_FOLDERS = { incoming: "incoming", moved: "moved", setAside: "set-aside" } as const;

/** The name is a folder and the instance of a systemd unit, so it holds nothing that either would have to escape. */
const NAME = /^[a-z][a-z0-9-]{0,38}[a-z0-9]$/;

/** Throws HostRefused. */
export function refuseName(name: string): void {
  if (!NAME.test(name))
    throw new HostRefused(
      `"${name}" cannot be a studio's name here. Use 2 to 40 small letters, digits and hyphens, beginning with a letter, such as harbour-hall.`,
    );
  if ((Object.values(OWN_FOLDERS) as string[]).includes(name))
    throw new HostRefused(`"${name}" is a folder of the host itself. Choose another name.`);
}

const LABEL = "[a-z0-9](?:[a-z0-9-]{0,61}[a-z0-9])?";
const HOST_NAME = new RegExp(`^(?:${LABEL}\\.)*[a-z](?:[a-z0-9-]{0,61}[a-z0-9])?$`);

export interface StudioAddress {
  /** "https://plans.example.org" */
  readonly origin: string;
  /** "plans.example.org", as the proxy's map has it: small letters, no port. */
  readonly hostName: string;
}

/** Throws HostRefused unless it is `https://` and a host name, and nothing more. */
export function readStudioAddress(url: string): StudioAddress {
  const say = (why: string) =>
    new HostRefused(`${url} cannot be a studio's address: ${why}. Give it as --url https://plans.example.org`);
  if (!URL.canParse(url)) throw say("it is no address");
  const { protocol, hostname, pathname, search, hash, username, password, origin } = new URL(url);
  if (protocol !== "https:") throw say("people reach it through the proxy, by https");
  if (username || password) throw say("it has a user or a password in it");
  if (pathname !== "/" || search || hash) throw say("a studio needs a host name of its own, not a folder of one");
  if (hostname.length > 253 || !HOST_NAME.test(hostname)) throw say("its host is a number or no host name");
  return { origin, hostName: hostname };
}
