/** What `later.ts` fetches in one piece. */
export { FollowScreen } from "../_line/follow-screen.tsx";
export { LiveClass } from "./live-class.tsx";
export { ReadyScreen } from "./ready-screen.tsx";
export { CardRehearsal } from "./rehearsal/card-rehearsal.tsx";
