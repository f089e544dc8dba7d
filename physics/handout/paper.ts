/** The paper a page is made for. */

export const papers = ['a4', 'letter'] as const;
export type Paper = (typeof papers)[number];

/** Where letters are written on Letter: Unicode CLDR, supplemental data, paper size US-Letter; from memory. */
const letter = new Set(['US', 'CA', 'MX', 'PR', 'PH', 'CL', 'CO', 'CR', 'GT', 'NI', 'PA', 'SV', 'VE', 'BZ']);

/** @param region two letters, ISO 3166; anything else is taken to write on A4 */
export function paperOf(region: string | undefined): Paper {
  return region !== undefined && letter.has(region.toUpperCase()) ? 'letter' : 'a4';
}
