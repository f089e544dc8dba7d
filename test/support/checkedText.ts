/** A text that shows whether it is whole: its own number at both ends and its length in its head. */
export function checkedText(n: number, length: number): string {
  return `${n} ${length} ${'x'.repeat(length)} ${n}`;
}

export function isWhole(text: string): boolean {
  const [n = '', length = ''] = text.split(' ', 2);
  return text === checkedText(Number(n), Number(length));
}
