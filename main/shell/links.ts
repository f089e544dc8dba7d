/** Addresses outside that Electron may hand to the system's browser, each exactly. The window offers none so far. */
const outside: ReadonlySet<string> = new Set<string>();

export function mayOpenOutside(address: string): boolean {
  return outside.has(address);
}
