/**
 * Random numbers from a seed: the same seed gives the same answer on every machine.
 *
 * Source: Steele, Lea, Flood, Fast splittable pseudorandom number generators, OOPSLA 2014 (the 32-bit mixer in wide
 * use, from memory); normal deviates by Box and Muller 1958.
 */
export class SeededRandom {
  #state: number;

  constructor(seed: number) {
    this.#state = seed | 0;
  }

  /** uniform in (0, 1) */
  uniform(): number {
    this.#state = (this.#state + 0x9e3779b9) | 0;
    let z = this.#state;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    z ^= z >>> 15;
    return ((z >>> 0) + 0.5) / 4294967296;
  }

  /** standard normal */
  normal(): number {
    return Math.sqrt(-2 * Math.log(this.uniform())) * Math.cos(2 * Math.PI * this.uniform());
  }
}
