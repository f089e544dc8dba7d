/** The part of Plotly that is bundled has the types of the whole. */
declare module 'plotly.js/lib/core' {
  import type * as P from 'plotly.js';
  const Plotly: typeof P;
  export default Plotly;
}
