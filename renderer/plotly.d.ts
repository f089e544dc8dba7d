declare module 'plotly.js/lib/core' {
  import type * as P from 'plotly.js';
  const Plotly: typeof P;
  export default Plotly;
}
