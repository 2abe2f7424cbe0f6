/** The server for measuring screens, in its own process: the real line over a real database of devices. */
import { startLineServer } from "#tests/support/line-server.ts";

const server = await startLineServer();
const screens = ["Coach's tablet", "Wall", "Crew", "Demonstrator"].map((name) => server.pair(name));
process.on("disconnect", () => process.exit(0));
process.send?.({ url: server.url, screens });
