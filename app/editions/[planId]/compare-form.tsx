/** Chooses two editions to compare: a form that needs no script. */
import styles from "./editions.module.css";

interface Props {
  readonly action: string;
  readonly editions: readonly { readonly number: number; readonly damaged: boolean }[];
  readonly from: number;
  readonly to: number;
}

export function CompareForm({ action, editions, from, to }: Props) {
  const sound = editions.filter(({ damaged }) => !damaged);
  return (
    <form className={styles.compare} action={action} method="get" key={`${from} ${to}`}>
      <OneOf label="Compare edition" name="from" chosen={from} editions={sound} />
      <OneOf label="with edition" name="to" chosen={to} editions={sound} />
      <button type="submit" className="button">
        Compare
      </button>
    </form>
  );
}

interface OneOfProps extends Pick<Props, "editions"> {
  readonly label: string;
  readonly name: string;
  readonly chosen: number;
}

function OneOf({ label, name, chosen, editions }: OneOfProps) {
  return (
    <label className={styles.choice}>
      <span>{label}</span>
      <select name={name} defaultValue={chosen}>
        {editions.map(({ number }) => (
          <option key={number} value={number}>
            {number}
          </option>
        ))}
      </select>
    </label>
  );
}
