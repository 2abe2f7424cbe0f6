/** A page that broke in mid-class says so and opens again: what runs is kept on the device, and its clock ran on. */
import { Component, type ReactNode } from "react";

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
        <h1>This page broke</h1>
        <p>The class that runs is kept on this device, and its clock runs on. Open the page again to go on with it.</p>
        <button type="button" className="button button-strong" onClick={() => location.reload()}>
          Open it again
        </button>
      </div>
    );
  }
}
