import { describe, expect, it } from "vitest";
import { talkOver, talkWords } from "#lib/talk/talk-words.ts";

describe("talk against time in words", () => {
  it("gives both in seconds, and by how much talk is too long", () => {
    expect(talkWords({ seconds: 21.2, roomSeconds: 45 })).toBe("21 s to say, 45 s of time");
    expect(talkWords({ seconds: 51.3, roomSeconds: 45 })).toBe("51.3 s to say, 45 s of time: 6.3 s too much");
    expect(talkWords({ seconds: 3, roomSeconds: 0 })).toBe("3 s to say, 0 s of time: 3 s too much");
    expect(talkOver({ seconds: 45, roomSeconds: 45 })).toBe(0);
  });
});
