/** Whether the floor opens again with no network, and what the screens say about it. */

/** `unsafe`: the studio is reached over plain HTTP, where browsers run no service worker. */
export type Worker = "asking" | "ready" | "unsafe" | "failed";

export const workerWords: Record<Worker, string> = {
  asking: "Keeping this page on the device.",
  ready: "This page is kept on the device: it opens with no network.",
  unsafe:
    "This page cannot open again without the network, because the studio is not reached over HTTPS. A class that is open goes on; do not reload it.",
  failed:
    "This page could not be kept on the device. A class that is open goes on; do not reload it without the network.",
};
