/**
 * One follower in its own process: prints where it takes the class to be, with the time on the machine's own clock,
 * which both processes share. Beside it, in the same run, a peer that has no shared clock: what it hears happened as it
 * heard it. Arguments: url, token, ms between looks, looks.
 */
import { WebSocket } from "ws";
import { openLine } from "#lib/client/line-link.ts";

const [, , url = "", token = "", everyMs = "50", looks = "100"] = process.argv;
/** The peer takes the class to begin when it hears of it. */
let heardAt: number | null = null;
const link = openLine({
  origin: url,
  token,
  view: "wall",
  WebSocket: WebSocket as unknown as typeof globalThis.WebSocket,
  // This process's clock has its own zero.
  now: () => performance.now() + 7e6,
  onState: ({ line }) => {
    if (line?.told && heardAt === null) heardAt = machine();
  },
});
const ready = setInterval(() => {
  if (link.studioNow() === null) return;
  clearInterval(ready);
  process.send?.("ready");
}, 10);
/** ms on the machine's own clock. */
function machine(): number {
  return performance.timeOrigin + performance.now();
}

let left = Number(looks);
const look = setInterval(() => {
  const start = link.state.followed?.log[0]?.at;
  if (start === undefined || heardAt === null) return;
  const at = machine();
  process.send?.({ at, position: link.classTime() - start, peer: at - heardAt });
  left--;
  if (left > 0) return;
  clearInterval(look);
  link.close();
  process.disconnect();
}, Number(everyMs));
