/** A connection between page and server that can go dead silently: nothing is forwarded, nothing is closed. */
import { type AddressInfo, connect, createServer, type Socket } from "node:net";

export interface DeadLine {
  /** `ws://127.0.0.1:<port>`, for pages. */
  readonly url: string;
  /** Forwards nothing more in either direction, and accepts new connections without answering. */
  die(): void;
  /** Forwards new connections again; dead ones stay dead. */
  live(): void;
  stop(): Promise<void>;
}

/** `to`: the server's `ws://` address. */
export async function deadLine(to: string): Promise<DeadLine> {
  const port = Number(new URL(to.replace("ws", "http")).port);
  const pairs = new Set<readonly [Socket, Socket]>();
  const sockets = new Set<Socket>();
  let dead = false;
  const server = createServer((page) => {
    const far = connect(port, "127.0.0.1");
    for (const socket of [page, far]) {
      sockets.add(socket);
      socket.on("error", () => undefined);
      socket.on("close", () => sockets.delete(socket));
    }
    if (dead) return;
    page.pipe(far);
    far.pipe(page);
    pairs.add([page, far]);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  return {
    url: `ws://127.0.0.1:${(server.address() as AddressInfo).port}`,
    die() {
      dead = true;
      for (const [page, far] of pairs) {
        page.unpipe(far).pause();
        far.unpipe(page).pause();
      }
      pairs.clear();
    },
    live() {
      dead = false;
    },
    async stop() {
      for (const socket of sockets) socket.destroy();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}
