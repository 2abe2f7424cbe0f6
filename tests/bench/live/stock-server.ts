/** The y-websocket project's own server (@y/websocket-server) as shipped: in memory, without rights. */
import { createServer } from "node:http";
import { setupWSConnection } from "@y/websocket-server/utils";
import { WebSocketServer } from "ws";
import { answerParent } from "./child.ts";

const http = createServer();
const wss = new WebSocketServer({ server: http });
wss.on("connection", setupWSConnection);
answerParent(http, { cookies: [] });
