import { FloorApp } from "./_parts/floor-app.tsx";

export default function FloorPage() {
  return <FloorApp />;
}
