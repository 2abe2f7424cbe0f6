/** Shown when the page fails in mid-class: the class is kept on the device and its clock goes on, so a reload continues it. */
import { Component, type ReactNode } from "react";
import { BROKE, OPEN_AGAIN } from "./page-words.ts";

interface Props {
  readonly children: ReactNode;
}
interface State {
  readonly broke: boolean;
}

export class Mishap extends Component<Props, State> {
  override state: State = { broke: false };

  static getDerivedStateFromError(): State {
    return { broke: true };
  }

  override render(): ReactNode {
    if (!this.state.broke) return this.props.children;
    return (
      <div
        role="alert"
        style={{ display: "grid", gap: "1.5rem", maxWidth: "34rem", margin: "auto", padding: "10vh 1.5rem" }}
      >
        <h1>{BROKE.title}</h1>
        <p>{BROKE.about}</p>
        <button type="button" className="button button-strong" onClick={() => location.reload()}>
          {OPEN_AGAIN}
        </button>
      </div>
    );
  }
}
