/** A port for a new studio: one that no studio of the host has, and on which nothing listens now. */
import { createServer } from "node:net";
import { type HostFolder, incomingStudios, studiosOf } from "./host-folder.ts";
import { HostRefused } from "./host-refused.ts";

/** To be called while alone on the host. Throws HostRefused. */
export async function freePortOf(host: HostFolder): Promise<number> {
  const [first, last] = host.settings.ports;
  const taken = new Set([...studiosOf(host), ...incomingStudios(host)].map(({ env }) => env.port));
  for (let port = first; port <= last; port++)
    if (!taken.has(port) && (await isFree(port, host.settings.address))) return port;
  throw new HostRefused(
    `No port from ${first} to ${last} is free for another studio. Widen "ports" in ${host.root}/host.json.`,
  );
}

/** An address of another machine cannot be tried from here: its port counts as free. */
function isFree(port: number, address: string): Promise<boolean> {
  return new Promise((resolve) => {
    const server = createServer();
    server.once("error", (error: NodeJS.ErrnoException) => resolve(error.code !== "EADDRINUSE"));
    server.listen(port, address, () => server.close(() => resolve(true)));
  });
}
