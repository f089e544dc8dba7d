/** A figure and its unit stay on one line. */
export function unbroken(text: string): string {
  return text.replaceAll(
    /(\d|½) (?=(?:kg|g|oz|lb|min|s|h|cm|mm|in|K|F degrees|kWh|°[CF]|%|AM|PM)(?![\p{L}\d]))/gu,
    '$1\u00a0',
  );
}
