/** Who may talk to the loopback server: a one-time token in the first address, then a cookie that scripts cannot read. */
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

/** 256 bits from the system's generator. */
function secret(): string {
  return randomBytes(32).toString('base64url');
}

/** In constant time, whatever the lengths: hashes are compared. */
function same(a: string, b: string): boolean {
  const hash = (text: string): Buffer => createHash('sha256').update(text).digest();
  return timingSafeEqual(hash(a), hash(b));
}

export class Entry {
  readonly #cookieName: string;
  readonly #session = secret();
  #token: string | undefined = secret();

  /** Cookies do not tell ports apart: the name does, so that two windows do not put each other out. */
  constructor(port: number) {
    this.#cookieName = `hearthclock-${port}`;
  }

  /** The path of the first address; throws when it was used. */
  firstPath(): string {
    if (this.#token === undefined) throw new Error('the one-time address was used already');
    return `/?token=${this.#token}`;
  }

  /** Takes the token once and answers the cookie to set; undefined for a wrong or used token. */
  exchange(token: string): string | undefined {
    if (this.#token === undefined || !same(token, this.#token)) return undefined;
    this.#token = undefined;
    return `${this.#cookieName}=${this.#session}; Path=/; HttpOnly; SameSite=Strict`;
  }

  admits(cookieHeader: string | undefined): boolean {
    for (const pair of (cookieHeader ?? '').split(';')) {
      const [name, ...value] = pair.trim().split('=');
      if (name === this.#cookieName && same(value.join('='), this.#session)) return true;
    }
    return false;
  }
}
