/** A text that shows whether it is whole: its own number at both ends and its length in its head. */
export function checkedText(n: number, length: number): string {
  return `${n} ${length} ${'x'.repeat(length)} ${n}`;
}

/** @throws Error when the text is not whole */
export function numberOf(text: string): number {
  const [n = '', length = ''] = text.split(' ', 2);
  if (text !== checkedText(Number(n), Number(length))) {
    throw new Error(
      `text: found ${text.length} characters that begin with ${text.slice(0, 20)}; allowed a whole one`,
    );
  }
  return Number(n);
}
