/** Answers of a pure function that are asked for again and again with the same arguments. */

/**
 * The function with its last answers kept. What it throws is not.
 *
 * @param keyOf a text that is the same for two arguments exactly when their answers are
 * @param most answers kept; the one longest unasked goes first
 */
export function remembering<Argument, Answer>(
  compute: (argument: Argument) => Answer,
  keyOf: (argument: Argument) => string,
  most = 8,
): (argument: Argument) => Answer {
  const kept = new Map<string, Answer>();
  return (argument) => {
    const key = keyOf(argument);
    const known = kept.get(key);
    const answer = known ?? compute(argument);
    kept.delete(key);
    kept.set(key, answer);
    if (kept.size > most) kept.delete(kept.keys().next().value!);
    return answer;
  };
}
