/**
 * The proxy's map: from host name to the address and port of its studio, one line each. It is written from the folders, never
 * read: whichever command comes next writes it whole again, so that a command which was cut off is put right.
 */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { writeWhole } from "#db/file/whole-file.ts";
import { type HostFolder, MAP_FILE, movedStudios, studiosOf } from "./host-folder.ts";
import { changeRunningMap } from "./proxy-socket.ts";
import { readStudioAddress } from "./studio-names.ts";

const mapFileOf = ({ root }: HostFolder): string => join(root, MAP_FILE);

/** Where the proxy finds a studio that listens there. */
export function proxyTarget({ host, port }: { readonly host: string; readonly port: number }): string {
  const everywhere = host === "0.0.0.0" || host === "::";
  return `${everywhere ? "127.0.0.1" : host}:${port}`;
}

/** By host name, in its order. A studio that is here comes before one of the same host name that has left. */
function wantedMap(host: HostFolder): ReadonlyMap<string, string> {
  const here = studiosOf(host).map(({ env }) => [readStudioAddress(env.origin).hostName, proxyTarget(env)] as const);
  const left = movedStudios(host).map(({ hostName, at }) => [hostName, at] as const);
  return new Map([...new Map([...left, ...here])].sort(([a], [b]) => (a < b ? -1 : 1)));
}

const textOf = (map: ReadonlyMap<string, string>): string =>
  [...map].map(([hostName, at]) => `${hostName} ${at}\n`).join("");

/** Whether the file says what the folders say. One that is not there yet says that there is nobody. */
export function mapIsRight(host: HostFolder): boolean {
  const file = mapFileOf(host);
  return (existsSync(file) ? readFileSync(file, "utf8") : "") === textOf(wantedMap(host));
}

/** Writes the file, then tells the running proxy. Resolves with a sentence where that needs a hand, else null. */
export async function publishMap(host: HostFolder): Promise<string | null> {
  const map = wantedMap(host);
  const file = mapFileOf(host);
  if (!existsSync(file) || !mapIsRight(host)) writeWhole(file, textOf(map), 0o644);
  const inTheWay = await changeRunningMap(host.settings.proxySocket, file, map);
  if (inTheWay === null) return null;
  return `The map ${file} is written, but ${inTheWay}. Let it read the map again: systemctl reload haproxy`;
}
