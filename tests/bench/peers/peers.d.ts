/** As much as the bench uses of packages that are installed when it first runs. */
declare module "@hocuspocus/server" {
  export class Server {
    constructor(settings: { extensions: unknown[]; quiet: boolean; stopOnSignals: boolean });
    readonly httpServer: import("node:http").Server;
  }
}
declare module "@hocuspocus/extension-sqlite" {
  export class SQLite {
    constructor(settings: { database: string });
  }
}
