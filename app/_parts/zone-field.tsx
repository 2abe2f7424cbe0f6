"use client";
/** A time zone out of some four hundred: typed, with the browser's own list of those that have what is typed. */
import { useEffect, useId, useRef, useState } from "react";
import { zoneNamed, zonesInOrder, zoneWords } from "#lib/calendar/zone-names.ts";

interface ZoneFieldProps {
  readonly label: string;
  readonly zone: string;
  /** In any order; `zone` need not be among them. */
  readonly zones: readonly string[];
  readonly disabled?: boolean;
  readonly hint?: string;
  readonly onChoose: (zone: string) => void;
}

const unknownWords = (text: string): string =>
  text.trim() === ""
    ? "Type a city or a region and choose a time zone from the list."
    : `No time zone is called “${text.trim()}”. Type a city or a region, such as Lisbon or Europe, and choose from the list.`;

/** Long because: the field, its list and its sentence are one. */
export function ZoneField({ label, zone, zones, disabled = false, hint, onChoose }: ZoneFieldProps) {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState(zoneWords(zone));
  const all = zonesInOrder([zone, ...zones]);
  const named = zoneNamed(text, all);
  // Another zone from outside, and the full name of a city that was typed.
  useEffect(() => setText(zoneWords(zone)), [zone]);
  useEffect(() => field.current?.setCustomValidity(named === undefined ? unknownWords(text) : ""), [named, text]);
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        ref={field}
        id={id}
        list={`${id}-zones`}
        value={text}
        disabled={disabled}
        autoComplete="off"
        spellCheck={false}
        aria-describedby={`${id}-hint`}
        aria-invalid={named === undefined || undefined}
        onInvalid={(event) => {
          // The form is not sent, and the sentence below says why; a browser's bubble would say it once more.
          event.preventDefault();
          event.currentTarget.focus();
        }}
        onFocus={(event) => event.target.select()}
        onChange={({ target }) => {
          setText(target.value);
          const chosen = all.find((one) => zoneWords(one) === target.value);
          if (chosen !== undefined) onChoose(chosen);
        }}
        onBlur={() => {
          if (named === undefined) return;
          setText(zoneWords(named));
          onChoose(named);
        }}
      />
      <datalist id={`${id}-zones`}>
        {all.map((one) => (
          <option key={one} value={zoneWords(one)} />
        ))}
      </datalist>
      <span
        id={`${id}-hint`}
        className={named === undefined ? "problem" : "quiet small"}
        role={named === undefined ? "alert" : undefined}
      >
        {named === undefined ? unknownWords(text) : (hint ?? "Type a city or a region to search the list.")}
      </span>
    </div>
  );
}
