/**
 * Why the server ends a socket. 4400-4499 are final: the page does not reconnect by itself but says what happened and
 * what to do. 4500-4599 mean "try again". Every text is shown to a person.
 */
export const CLOSE = {
  badMessage: {
    code: 4400,
    text: "The server could not read what this page sent. Reload the page; your words are kept on this device.",
  },
  notSignedIn: {
    code: 4401,
    text: "Your session has ended. Sign in again: what you typed is kept on this device and goes back into the plan.",
  },
  otherPerson: {
    code: 4402,
    text: "Somebody else has signed in on this device. What this page holds is kept here: sign in as yourself again to bring it into the plan.",
  },
  noRight: { code: 4403, text: "You may no longer open this. What you typed is kept on this device." },
  unknownDocument: { code: 4404, text: "There is no such document here. It may have been deleted." },
  tooSlowToSignIn: { code: 4408, text: "The server could not tell in time who is asking. Reload the page." },
  erasing: {
    code: 4406,
    text: "This page would have erased part of this document for good, which nobody can here: what is taken out can always be put back. Nothing of that change was taken in. Copy what you typed last, then load the document again.",
  },
  newerDocument: {
    code: 4409,
    text: "This document was written by a newer version of the program. Update the server before opening it; nothing was changed.",
  },
  damaged: {
    code: 4411,
    text: "The server's record of this document is damaged, so it was not opened and nothing was changed. Ask whoever runs the server to look at its log; your words are kept on this device.",
  },
  tooLarge: {
    code: 4413,
    text: "That change is larger than the server takes at once. It is kept on this device but not in the plan: take it back, or add it in smaller parts.",
  },
  tooHeavy: {
    code: 4414,
    text: "That change is more work than the server takes at once. Nothing of it was taken in; it is kept on this device. Take it back, or make it in smaller parts.",
  },
  full: {
    code: 4415,
    text: "This document is as large as it may be: what you added last was not taken in, and is kept on this device. Take it back or shorten something, then try again. A plan that is still full was changed too often: duplicate it on your desk, the copy starts afresh.",
  },
  oldPage: { code: 4426, text: "The program has been updated. Reload the page; your words are kept on this device." },
  tooMuch: { code: 4429, text: "This page sent too much before the server knew who was asking. Reload the page." },
  turnedAway: { code: 4430, text: "This page kept sending what it may not change here. Reload the page." },
  tooManyPages: {
    code: 4431,
    text: "You have this studio open in more pages than the server takes for one person. Close some of them, then reload this one.",
  },
  generationChanged: {
    code: 4410,
    text: "The server's copy of this document was replaced. Reload the page; your local copy is set aside.",
  },
  roomReloaded: { code: 4500, text: "The document is being read again from disk. Reconnecting." },
  rightsChanged: { code: 4501, text: "Your rights have changed. Reconnecting." },
  storageFailing: {
    code: 4503,
    text: "The server cannot save just now. Your words are kept on this device; trying again.",
  },
  storageDamaged: {
    code: 4508,
    text: "The server's database is damaged and takes nothing more until a backup is restored. Your words are kept on this device; trying again.",
  },
  tooSlow: { code: 4504, text: "This connection could not keep up. Reconnecting." },
  idTaken: { code: 4506, text: "Another page writes under the same number: this one takes a new one. Reconnecting." },
  othersFirst: {
    code: 4507,
    text: "This page holds words of a colleague that the server has not got from them yet. Yours are kept on this device and go in as soon as your colleague's page is back; trying again.",
  },
  stopping: {
    code: 4505,
    text: "The server is stopping. Your words are kept on this device; reconnecting when it is back.",
  },
} as const;

export type CloseName = keyof typeof CLOSE;

/** The sentence for a close code, or undefined for an ordinary lost connection. */
export function closeText(code: number): string | undefined {
  return Object.values(CLOSE).find((c) => c.code === code)?.text;
}

export const isFinalClose = (code: number): boolean => code >= 4400 && code < 4500;
