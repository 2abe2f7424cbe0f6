/**
 * A plain HTTP proxy: forwards requests, and upgrades only when told to. It stands in front of a
 * server, or is the proxy that a browser uses, which then sends whole URLs and asks for tunnels (CONNECT).
 */
import { createServer, type IncomingMessage, request } from "node:http";
import { type AddressInfo, connect, type Socket } from "node:net";

export interface PlainProxy {
  readonly port: number;
  readonly url: string;
  /** From now on upgrades are forwarded, or not. */
  carry(upgrades: boolean): void;
  stop(): Promise<void>;
}

export interface ProxySetup {
  /** Where it forwards to; asked at each request, so that the server may start later. */
  readonly to: () => number;
  /** "as requests": forwarded without the upgrade headers, as by a proxy that does not know them. */
  readonly upgrades?: boolean | "as requests";
  /** Changes what is forwarded. */
  readonly headers?: (headers: IncomingMessage["headers"]) => IncomingMessage["headers"];
}

const UPGRADE = /^(upgrade|connection|sec-websocket-.+)$/;

export async function plainProxy({ to, upgrades = false, headers = (same) => same }: ProxySetup): Promise<PlainProxy> {
  let carries: ProxySetup["upgrades"] = upgrades;
  const server = createServer((asked, answer) => {
    const { method, url = "/" } = asked;
    const path = url.startsWith("http://") ? url.slice(new URL(url).origin.length) : url;
    const on = request({ port: to(), host: "127.0.0.1", method, path, headers: headers(asked.headers) }, (came) => {
      answer.writeHead(came.statusCode ?? 502, came.headers);
      came.pipe(answer);
    });
    on.on("error", () => answer.writeHead(502).end("Bad gateway"));
    asked.pipe(on);
  });
  // Upgraded sockets no longer belong to the server and would keep it from ending.
  const open = new Set<Socket>();
  server.on("connection", (socket) => {
    open.add(socket);
    socket.on("close", () => open.delete(socket));
  });
  server.on("upgrade", (asked, socket) => {
    socket.on("error", () => undefined);
    if (!carries) return socket.end("HTTP/1.1 426 Upgrade Required\r\nContent-Length: 0\r\nConnection: close\r\n\r\n");
    const far = connect(to(), "127.0.0.1", () => {
      const kept = Object.entries(headers(asked.headers)).filter(([name]) => carries === true || !UPGRADE.test(name));
      const lines = kept.map(([name, value]) => `${name}: ${value}\r\n`);
      far.write(`GET ${asked.url} HTTP/1.1\r\n${lines.join("")}\r\n`);
      far.pipe(socket).pipe(far);
    });
    far.on("error", () => socket.destroy());
    return far;
  });
  server.on("connect", (_asked, socket) => {
    socket.on("error", () => undefined);
    if (!carries)
      return socket.end("HTTP/1.1 405 Method Not Allowed\r\nContent-Length: 0\r\nConnection: close\r\n\r\n");
    const far = connect(to(), "127.0.0.1", () => {
      socket.write("HTTP/1.1 200 Connection established\r\n\r\n");
      far.pipe(socket).pipe(far);
    });
    far.on("error", () => socket.destroy());
    return far;
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  return {
    port,
    url: `http://localhost:${port}`,
    carry: (is) => {
      carries = is;
    },
    async stop() {
      for (const socket of open) socket.destroy();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}
