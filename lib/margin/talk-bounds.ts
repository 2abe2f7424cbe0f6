/** How much can be said about one plan. Our own numbers, several times what a long year of reading leaves on one. */
export const MOST_THREADS = 500;
/** Of one thread. */
export const MOST_THREAD_COMMENTS = 200;
/** Letters of all comments of a plan and of what they are pinned to: as many as a long novel has. */
export const TALK_MAX = 1_000_000;
