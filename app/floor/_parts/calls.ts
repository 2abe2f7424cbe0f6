/** Short tones and vibrations at heads-up, count-in and change, where the device's settings ask for them. */
import { useEffect, useRef } from "react";
import type { FloorView } from "#lib/floor/view.ts";

type FloorCall = "heads-up" | "count" | "change";

/** Hz and seconds of one tone after the other. Our own choice: far apart, and short enough not to cover a voice. */
const TONES: Readonly<Record<FloorCall, readonly (readonly [number, number])[]>> = {
  "heads-up": [
    [660, 0.12],
    [880, 0.16],
  ],
  count: [[880, 0.08]],
  change: [[1320, 0.35]],
};
const SHAKES: Readonly<Record<FloorCall, number[]>> = { "heads-up": [80, 60, 80], count: [40], change: [250] };
const LOUDNESS = 0.25;

let audio: AudioContext | undefined;

/** Browsers allow sound only after a touch or a key press: call it from one. */
export function wakeSound(): void {
  audio ??= new AudioContext();
  audio.resume().catch(() => undefined);
}

export function soundCall(call: FloorCall): void {
  if (audio?.state !== "running") return;
  let at = audio.currentTime;
  for (const [hertz, seconds] of TONES[call]) {
    const [tone, gain] = [audio.createOscillator(), audio.createGain()];
    tone.frequency.value = hertz;
    // Fades in and out over 10 ms: a tone that is cut off clicks.
    gain.gain.setValueAtTime(0, at);
    gain.gain.linearRampToValueAtTime(LOUDNESS, at + 0.01);
    gain.gain.setValueAtTime(LOUDNESS, at + seconds - 0.01);
    gain.gain.linearRampToValueAtTime(0, at + seconds);
    tone.connect(gain).connect(audio.destination);
    tone.start(at);
    tone.stop(at + seconds);
    at += seconds;
  }
}

export const shakeCall = (call: FloorCall): boolean => "vibrate" in navigator && navigator.vibrate(SHAKES[call]);
export const canShake = (): boolean => typeof navigator !== "undefined" && "vibrate" in navigator;

/** The call to make when one moment follows another. */
function callOf(was: FloorView, is: FloorView): FloorCall | null {
  if (is.held || is.phase === "waiting") return null;
  if (was.phase !== is.phase || was.item?.id !== is.item?.id) return "change";
  if (is.countIn !== null && is.countIn !== was.countIn) return "count";
  return is.headsUp && !was.headsUp ? "heads-up" : null;
}

export function useCalls(view: FloorView, { sound, vibration }: { sound: boolean; vibration: boolean }): void {
  const last = useRef(view);
  useEffect(() => {
    const call = callOf(last.current, view);
    last.current = view;
    if (call && sound) soundCall(call);
    if (call && vibration) shakeCall(call);
  }, [view, sound, vibration]);
  useEffect(() => {
    if (!sound) return;
    // After a reload the page has to be touched once more before it may make a sound.
    window.addEventListener("pointerdown", wakeSound);
    window.addEventListener("keydown", wakeSound);
    return () => {
      window.removeEventListener("pointerdown", wakeSound);
      window.removeEventListener("keydown", wakeSound);
    };
  }, [sound]);
}
