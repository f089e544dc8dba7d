/** The evening when nothing is left of it. */
import { planNext } from './tonightStore.ts';

export function Over({ rehearsed }: { readonly rehearsed: boolean }) {
  return (
    <section className="tonight-now" aria-labelledby="tonight-over">
      <h2 id="tonight-over" className="tonight-title">
        The evening is over
      </h2>
      <p className="tonight-how">
        Switch the oven off. The plate stays hot for hours: leave it in the oven until it is cold.
      </p>
      {!rehearsed && (
        <>
          <p className="tonight-how muted">
            What happened and what you said lies in the plan: save it, and the next evening opens with it.
          </p>
          <div className="tonight-keys">
            <button type="button" className="key framed tonight-key" onClick={planNext}>
              Plan the next one
            </button>
          </div>
        </>
      )}
    </section>
  );
}
