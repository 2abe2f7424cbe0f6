/** What `use-screens.ts` fetches in one piece. */

export { LiveClass } from "../_class/live-class.tsx";
export { FollowScreen } from "../_line/follow-screen.tsx";
export { ReadyScreen } from "../_ready/ready-screen.tsx";
export { CardRehearsal } from "../_rehearsal/card-rehearsal.tsx";
