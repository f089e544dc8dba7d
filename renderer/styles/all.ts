/** Every style sheet of the window, in the order in which they may override one another. */
import '@fontsource-variable/inter/index.css';
import './tokens.css';
import './base.css';
import './frame.css';
import './inputs.css';
import './answers.css';
import './clock.css';
import './drawing.css';
import './notes.css';
import './amounts.css';
import './tonight.css';
import './calibrate.css';
import './charts.css';
import './forced.css';
import './print.css';
