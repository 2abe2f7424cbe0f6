/** Takes a port, or says in a sentence why it cannot be had. */
import type { Server } from "node:http";

export interface ListenAt {
  readonly host: string;
  /** 0: any free one. */
  readonly port: number;
  /** What the settings are called, for the sentence. */
  readonly names: { readonly host: string; readonly port: string };
}

/** The server cannot listen on its address; `message` is for the person who started it. */
export class CannotListen extends Error {}

/** Returns the port that was taken. Throws CannotListen. */
export function listen(server: Server, at: ListenAt): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once("error", (error) => reject(new CannotListen(listenSentence(error, at), { cause: error })));
    server.listen(at.port, at.host, () => {
      server.removeAllListeners("error");
      const address = server.address();
      resolve(typeof address === "object" && address ? address.port : at.port);
    });
  });
}

function listenSentence(error: Error, { host, port, names }: ListenAt): string {
  const code = "code" in error ? error.code : undefined;
  if (code === "EADDRINUSE") {
    return `Port ${port} on ${host} is in use by another program. Stop that program, or choose another port with ${names.port}=...`;
  }
  if (code === "EACCES") return `This account may not use port ${port}. Choose one above 1023 with ${names.port}=...`;
  if (code === "EADDRNOTAVAIL" || code === "ENOTFOUND")
    return `This machine has no address ${host}. Change ${names.host}.`;
  return `Port ${port} on ${host} cannot be used: ${error.message}`;
}
