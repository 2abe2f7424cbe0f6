/** The tracks of an edition, read by the browser's WebVTT parser, an independent implementation. */
import { expect, test } from "@playwright/test";
import { buildCard } from "#lib/card/card.ts";
import { chaptersVtt, cuesVtt } from "#lib/tracks/tracks.ts";
import { samplePlan } from "#tests/unit/card/sample-plan.ts";

const card = buildCard({
  studio: { name: "Tholepin Strength", town: "Port Ellery" },
  planId: "rows",
  number: 2,
  room: { id: "harbour", name: "Harbour room" },
  plan: samplePlan(),
  issuedAt: 0,
  expiresAt: 86_400_000,
});

for (const [name, file, count] of [
  ["cues", cuesVtt(card), card.cues.length],
  ["chapters", chaptersVtt(card), 8],
] as const) {
  test(`${name} are read whole, in order, with their words`, async ({ page }) => {
    await page.route("http://class.example/**", (route) =>
      route.request().url().endsWith(".vtt")
        ? route.fulfill({ contentType: "text/vtt; charset=utf-8", body: file })
        : route.fulfill({ contentType: "text/html", body: "<video><track default src=/it.vtt></video>" }),
    );
    await page.goto("http://class.example/");
    const read = await page.evaluate(
      () =>
        new Promise<{ from: number; to: number; text: string }[]>((resolve, reject) => {
          const track = document.querySelector("track");
          if (!track) return reject(new Error("no track"));
          const done = () => {
            const cues = [...(track.track.cues ?? [])];
            resolve(
              cues.map((cue) => ({
                from: cue.startTime,
                to: cue.endTime,
                text: cue instanceof VTTCue ? (cue.getCueAsHTML().textContent ?? "") : "",
              })),
            );
          };
          track.addEventListener("load", done);
          track.addEventListener("error", () => reject(new Error("the browser refused the file")));
          track.track.mode = "hidden";
          if (track.readyState === HTMLTrackElement.LOADED) done();
        }),
    );
    expect(read).toHaveLength(count);
    expect(read.every((cue) => cue.to > cue.from)).toBe(true);
    if (name === "cues") expect(read).toEqual(card.cues.map(({ from, to, text }) => ({ from, to, text })));
    else expect(read.map((cue) => cue.text)).toContain("Pull --> and reach");
  });
}
