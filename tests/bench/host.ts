export async function benchHost(): Promise<boolean> {
  return true;
}
