/** Everything that the studio has, as files for other programs or for another server. A plain link: the browser saves the file. */
import styles from "./studio.module.css";

const WORDS = {
  intro:
    "Plans, months, moves, rooms, comments, signed editions, class logs, people and the record, as open files in one zip. README.txt in it says what each is. It holds names and addresses, no passwords and nothing that lets anybody in.",
  back: "An empty Springline takes the file back in whole. A backup is for this server; an export is yours to keep, to read with other programs or to take elsewhere.",
  wait: "The file takes a few seconds to arrive. The record notes that you downloaded it.",
};

export function ExportPart() {
  return (
    <>
      <div className="spread">
        <h2>Export</h2>
        <a className="button" href="/api/studio/export" aria-describedby="export-wait">
          Export everything
        </a>
      </div>
      <p className="quiet">{WORDS.intro}</p>
      <p className={`quiet ${styles.mailServer}`}>{WORDS.back}</p>
      <p className={`quiet small ${styles.mailServer}`} id="export-wait">
        {WORDS.wait}
      </p>
    </>
  );
}
