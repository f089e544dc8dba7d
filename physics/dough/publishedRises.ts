/** Rises as published, with what of them calibrates the model. */
import type { YeastId } from '../evening/ids.ts';
import type { Leavened } from './yeastActivity.ts';

export interface PublishedRise {
  readonly id: string;
  readonly source: string;
  readonly dough: Leavened;
  /** degC, of dough and room */
  readonly doughC: number;
  readonly roomC: number;
  /** h, from and to */
  readonly printed: readonly [from: number, to: number];
  /** the one free number of the model is the geometric mean over these */
  readonly calibrates: boolean;
  /** what the published end leaves open */
  readonly note: string;
}

function leavened(kind: YeastId, percent: number, salt: number, sugar = 0): Leavened {
  return {
    liquid: [{ kind: 'water', percent: 60, waterShare: undefined }],
    salt,
    sugar,
    yeast: { kind, percent },
  };
}

/** Rises that somebody printed, each with the dose, salt and temperature it was given for. */
export const publishedRises: readonly PublishedRise[] = [
  {
    id: 'rise-basic-bread',
    source: 'kingsleysullivan.com basic formula, 2 % fresh, "warm" (taken as 28 degC), doubled',
    dough: leavened('fresh', 2, 2),
    doughC: 28,
    roomC: 28,
    printed: [1, 1.5],
    calibrates: true,
    note: 'calibrates; temperature not printed',
  },
  {
    id: 'rise-french-bread',
    source: 'A Treatise on Baking, French bread, 1.02 % fresh, dough 78-82, room 76 degF, first rise',
    dough: leavened('fresh', 1.02, 1.4, 1.5),
    doughC: 26.7,
    roomC: 26.7,
    printed: [3, 3.25],
    calibrates: true,
    note: 'calibrates; ends past doubled ("sinks to the mere touch")',
  },
  {
    id: 'rise-field-bread',
    source: 'Manual for Army Bakers 1916, field bread, 0.71 % fresh, to the first punch',
    dough: leavened('fresh', 0.71, 1.9, 2.9),
    doughC: 27,
    roomC: 27,
    printed: [4.5, 4.5],
    calibrates: true,
    note: 'calibrates; temperature not printed, taken as 27 degC; very stiff dough',
  },
  {
    id: 'rise-naples',
    source: 'AVPN (older text), 0.17 % fresh, 25 degC, 2 h and 4 to 6 h as balls',
    dough: leavened('fresh', 0.17, 3),
    doughC: 25,
    roomC: 25,
    printed: [6, 8],
    calibrates: true,
    note: 'calibrates; yeast grows in a long rise, which the exponent 0.7 of the dose does not know',
  },
  {
    id: 'rise-event-pizza',
    source:
      'communitypizzaevents.com, 0.1 % instant, 20 degC, 12 h and at least 6 h as balls, almost doubled',
    dough: leavened('instant', 0.1, 2.7),
    doughC: 20,
    roomC: 20,
    printed: [18, 18],
    calibrates: true,
    note: 'calibrates',
  },
  {
    id: 'rise-vienna-bread',
    source: 'A Treatise on Baking, Vienna bread, 1.02 % fresh, first rise',
    dough: leavened('fresh', 1.02, 1.4, 1),
    doughC: 26.7,
    roomC: 26.7,
    printed: [3.25, 3.25],
    calibrates: false,
    note: 'ends past doubled',
  },
  {
    id: 'rise-same-day-pizza',
    source: 'PMQ, Sept 2006, same-day pizzeria dough, 0.75 % fresh at 85 to 90 degF, used within 2 h',
    dough: leavened('fresh', 0.75, 1.75),
    doughC: 30.6,
    roomC: 30.6,
    printed: [2, 2],
    calibrates: false,
    note: 'time of use, not of doubling',
  },
  {
    id: 'rise-oven-maker',
    source: "an oven maker's recipe, 0.1 to 0.2 % instant, 30 degC, doubled to tripled",
    dough: leavened('instant', 0.15, 2.25),
    doughC: 30,
    roomC: 30,
    printed: [7, 8],
    calibrates: false,
    note: 'its end is up to tripled',
  },
  {
    id: 'rise-no-knead',
    source: 'no-knead bread, New York Times 2006, about 0.23 % instant, 70 degF, 12 to 18 h',
    dough: leavened('instant', 0.23, 2),
    doughC: 21.1,
    roomC: 21.1,
    printed: [12, 18],
    calibrates: false,
    note: 'its end is a bubbly, very wet dough, far past doubled',
  },
  {
    id: 'rise-sponge',
    source: 'The International Cook Book, no. 3282, sponge with 3.1 % fresh, no salt, 80 degF',
    dough: leavened('fresh', 3.1, 0),
    doughC: 26.7,
    roomC: 26.7,
    printed: [2.5, 3],
    calibrates: false,
    note: 'its end is a sponge that has fallen and risen again',
  },
];

/** h, geometric middle of what is printed. */
export function printedHours({ printed: [from, to] }: PublishedRise): number {
  return Math.sqrt(from * to);
}
