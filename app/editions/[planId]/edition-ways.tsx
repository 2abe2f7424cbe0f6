/** Where an edition leads: its sheets, its classes, its tracks. */

const PAGES = [
  ["print", "Print sheet"],
  ["crew", "Crew sheet"],
  ["classes", "Classes taught"],
] as const;
const FILES = [
  ["cues.vtt", "Cue track"],
  ["chapters.vtt", "Chapters"],
  ["plan", "Plan file"],
] as const;

/** `path`: the edition's address. */
export function EditionWays({ path, number }: { readonly path: string; readonly number: number }) {
  const of = <span className="visually-hidden">, edition {number}</span>;
  return (
    <>
      {PAGES.map(([part, words]) => (
        <a key={part} className="act" href={`${path}/${part}`}>
          {words}
          {of}
        </a>
      ))}
      {FILES.map(([part, words]) => (
        <a key={part} className="act" href={`/api${path}/${part}`} download>
          {words}
          {of}
        </a>
      ))}
    </>
  );
}
