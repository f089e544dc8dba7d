/** The cook's own words about each pizza; they stay with the plan and open the next evening. */
import { useState } from 'react';
import { shadeIds } from '../../physics/evening/ids.ts';
import { shadeLightness } from '../../physics/evening/shade.ts';
import { shadeText } from '../../physics/handout/setup.ts';
import type { LogEntry } from '../../physics/tonight/log.ts';

export type Said = Extract<LogEntry, { readonly what: 'words' }>;

export function wordsOf(log: readonly LogEntry[]): readonly Said[] {
  return log.filter((entry): entry is Said => entry.what === 'words');
}

export function WordsList({ said }: { readonly said: readonly Said[] }) {
  return (
    <ul className="words-list">
      {said.map(({ at, pizza, words, lightness }) => (
        <li key={`${String(at)} ${words}`}>
          Pizza {pizza}
          {lightness === undefined ? '' : `, ${shadeText(lightness)} below`}: “{words}”
        </li>
      ))}
    </ul>
  );
}

interface WordsProps {
  /** pizzas that are out, the latest first */
  readonly out: readonly number[];
  readonly said: readonly Said[];
  readonly onSay: (pizza: number, words: string, lightness: number | undefined) => void;
}

export function Words({ out, said, onSay }: WordsProps) {
  const [words, setWords] = useState('');
  const [shade, setShade] = useState('');
  const [chosen, setChosen] = useState<number>();
  const [empty, setEmpty] = useState(false);
  const [latest] = out;
  if (latest === undefined) return null;
  const pizza = chosen !== undefined && out.includes(chosen) ? chosen : latest;
  const say = (): void => {
    const text = words.trim();
    setEmpty(text === '');
    if (text === '') return;
    const named = shadeIds.find((id) => id === shade);
    onSay(pizza, text, named && shadeLightness[named]);
    setWords('');
    setShade('');
  };
  return (
    <section aria-labelledby="tonight-words">
      <h2 id="tonight-words">How was it?</h2>
      <form
        className="words"
        onSubmit={(event) => {
          event.preventDefault();
          say();
        }}
      >
        <label>
          Pizza
          <select
            className="entry"
            value={pizza}
            onChange={(event) => {
              setChosen(Number(event.currentTarget.value));
            }}
          >
            {out.map((n) => (
              <option key={n} value={n}>
                {n}
              </option>
            ))}
          </select>
        </label>
        <label>
          Its base
          <select
            className="entry"
            value={shade}
            onChange={(event) => {
              setShade(event.currentTarget.value);
            }}
          >
            <option value="">not judged</option>
            {shadeIds.map((id) => (
              <option key={id} value={id}>
                {id}
              </option>
            ))}
          </select>
        </label>
        <label className="words-text">
          In your words
          <input
            className="entry"
            maxLength={500}
            value={words}
            aria-invalid={empty}
            aria-describedby={empty ? 'words-empty' : undefined}
            onChange={(event) => {
              setWords(event.currentTarget.value);
              setEmpty(false);
            }}
          />
        </label>
        <button type="submit" className="key framed tonight-key">
          Keep
        </button>
        {empty && (
          <p id="words-empty" className="reason">
            Found nothing; allowed a word or more of how it was.
          </p>
        )}
      </form>
      <WordsList said={said} />
    </section>
  );
}
