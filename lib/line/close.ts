/** Why the server ends a screen's socket. 4400-4499 are final, 4500-4599 mean "try again". Every text is shown to a person. */
export const LINE_CLOSE = {
  badMessage: { code: 4400, text: "The studio could not read what this screen sent. Reload the page." },
  notPaired: {
    code: 4401,
    text: "This device is no longer paired: its pairing was taken back. What it keeps still works here.",
  },
  replaced: { code: 4402, text: "The floor is open in another tab of this device, which is on the line instead." },
  tooSlow: { code: 4408, text: "This screen did not say in time who it is. Reload the page." },
  tooLarge: { code: 4413, text: "What this screen sent is larger than the studio takes. Reload the page." },
  oldPage: { code: 4426, text: "The program has been updated. Reload the page." },
  tooMuch: { code: 4429, text: "This screen sent more than the studio takes. Reload the page." },
  full: { code: 4430, text: "There are as many screens on the line of this room as the studio takes." },
  cannotKeepUp: { code: 4504, text: "This connection could not keep up. Trying again." },
  stopping: { code: 4505, text: "The studio's server is stopping. This screen runs on." },
} as const;

export type LineCloseName = keyof typeof LINE_CLOSE;

/** The sentence for a final close; null where trying again is of use, as after any lost connection. */
export function finalCloseText(code: number): string | null {
  // 1009: the socket layer itself found a frame too large.
  if (code === 1009) return LINE_CLOSE.tooLarge.text;
  if (code < 4400 || code >= 4500) return null;
  return Object.values(LINE_CLOSE).find((close) => close.code === code)?.text ?? LINE_CLOSE.badMessage.text;
}
